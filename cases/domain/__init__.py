"""The rules of the records: who may, which moves there are, what is refused. No Django."""
