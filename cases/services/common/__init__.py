"""What every write uses: who may, the lock, the change log, what a client sent twice."""
