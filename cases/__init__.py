"""People, records and approvals: cases, their canals and readings, plan versions, reviews.

api → services | queries → mapping → models → domain. Every write is a service, every read beyond one row a query;
`domain` holds the rules and knows no Django.
"""
