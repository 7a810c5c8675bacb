"""How deep each instrument is expected to go, how sure that is, and what was felt. An estimate for teaching.

contact_depth    one instrument in one canal: exact, by a search over events
contact_rows     the same over many canals at once
samples          canals, hands and instruments drawn from the published spreads
sure             where what has been in a canal has surely stood
belief, descent  the samples weighed by what was recorded, and the descending series over them
forecast         every insertion on the way through a run sheet
"""
