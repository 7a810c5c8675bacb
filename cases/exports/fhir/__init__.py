"""A case as HL7 FHIR R4 (4.0.1) has it: frozen values of what is sent, and how rows and values become them.

No library is needed: what is sent is small, and outside judges hold it to the standard in tests.
"""
