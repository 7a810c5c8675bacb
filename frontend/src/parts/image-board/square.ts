import type { Edit, TouchedSpot } from './gestures'
import type { Marked } from './marked-line'
import type { Size, Spot } from './view'

// An image whose pixels are taller than wide is shown as tall as it is: the board counts in widths of a pixel, whoever
// marks counts in pixels.

export const squareSize = ({ width, height }: Size, rowPerColumn: number): Size => ({
  width,
  height: height * rowPerColumn,
})

export function squareLine(line: Marked, rowPerColumn: number): Marked {
  const { points, spots } = line
  return {
    ...line,
    points: points.map((point) => squareSpot(point, rowPerColumn)),
    ...(spots && { spots: spots.map((spot) => ({ ...spot, at: squareSpot(spot.at, rowPerColumn) })) }),
  }
}

export function squareEdit(edit: Edit, rowPerColumn: number): Edit {
  const inPixels = ({ x, y, zoom }: TouchedSpot): TouchedSpot => ({ x, y: y / rowPerColumn, zoom })
  return {
    ...edit,
    marks: edit.marks.map((mark) => squareSpot(mark, rowPerColumn)),
    onMove: (number, to) => edit.onMove(number, inPixels(to)),
    onPlace: (at) => edit.onPlace(inPixels(at)),
  }
}

/** A mark as the board counts. */
export const squareSpot = ({ x, y }: Spot, rowPerColumn: number): Spot => ({ x, y: y * rowPerColumn })
