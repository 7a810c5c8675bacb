import 'fake-indexeddb/auto'
import { cleanup } from '@testing-library/preact'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach } from 'vitest'
import { closeDatabase } from '@/store/database'

beforeEach(async () => {
  await closeDatabase()
  globalThis.indexedDB = new IDBFactory()
})

afterEach(cleanup)
