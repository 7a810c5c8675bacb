"""How deep each instrument is expected to go, how sure that is, and what was felt. An estimate for teaching.

contact_depth    one instrument in one canal: exact
rows             many canals as arrays
numpy_rows       what many canals at once spend their time in; compiled_rows the same, compiled
kernel           which of the two runs
contact_rows     the estimate for many canals at once
samples          canals, hands and instruments drawn from the published spreads
reading          how a recorded depth differs from where the instrument stopped
sure             where instruments have stood for certain
belief, descent  the samples weighed by what was recorded, and the descending series over them
last_depth       the last recorded depth, held against what was expected
forecast         every insertion on the way through a run sheet
"""
