import { describe, expect, test } from 'vitest'
import { deeds, globals, nothingLeft } from './left-behind'

describe('what a file leaves behind for the next in its thread', () => {
  test('is named: a global that came, one that went, one in the place of another', () => {
    const before = new Map<string, unknown>([
      ['gone', 1],
      ['other', 1],
      ['same', 1],
    ])
    const after = new Map<string, unknown>([
      ['came', 1],
      ['other', 2],
      ['same', 1],
    ])
    expect(() => nothingLeft(before, after)).toThrow(/: gone, other, came$/)
    expect(() => nothingLeft(before, before)).not.toThrow()
  })

  test('is seen on the global object and on the classes of the window', () => {
    const [globalsBefore, deedsBefore] = [globals(), deeds()]
    const { showModal } = HTMLDialogElement.prototype
    Object.assign(globalThis, { leftOver: true })
    HTMLDialogElement.prototype.showModal = () => undefined
    expect(() => nothingLeft(globalsBefore, globals())).toThrow(/\bleftOver\b/)
    expect(() => nothingLeft(deedsBefore, deeds())).toThrow(/: HTMLDialogElement.prototype.showModal$/)
    HTMLDialogElement.prototype.showModal = showModal
    Reflect.deleteProperty(globalThis, 'leftOver')
    expect(() => nothingLeft(globalsBefore, globals())).not.toThrow(/\bleftOver\b/)
    nothingLeft(deedsBefore, deeds())
  })
})
