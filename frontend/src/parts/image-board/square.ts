import type { Edit } from './gestures'
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
    points: points.map((point) => onBoard(point, rowPerColumn)),
    ...(spots && { spots: spots.map((spot) => ({ ...spot, at: onBoard(spot.at, rowPerColumn) })) }),
  }
}

export function squareEdit(edit: Edit, rowPerColumn: number): Edit {
  const inPixels = ({ x, y }: Spot): Spot => ({ x, y: y / rowPerColumn })
  return {
    ...edit,
    marks: edit.marks.map((mark) => onBoard(mark, rowPerColumn)),
    onMove: (number, to) => edit.onMove(number, inPixels(to)),
    onPlace: (at) => edit.onPlace(inPixels(at)),
  }
}

const onBoard = ({ x, y }: Spot, rowPerColumn: number): Spot => ({ x, y: y * rowPerColumn })
