"""The cases as HL7 FHIR R4, to read: by type, by id, searched, and all of a patient."""
