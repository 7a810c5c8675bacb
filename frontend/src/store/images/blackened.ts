/** Where a finger went over a picture, in its pixels. */
export interface Wipe {
  readonly points: readonly { readonly x: number; readonly y: number }[]
  readonly width: number
}

const MOST_PX = 16_000_000 // of a canvas, on the phones that bound it lowest
const QUALITY = 0.95
const HARDLY = 0.01 // a stroke without length is not drawn

/** HEIC as JPEG where this browser draws it: it can then be looked at here, and not every server reads HEIC. */
export const drawable = (picture: Blob): Promise<Blob> =>
  /^image\/hei[cf]/.test(picture.type) ? blackened(picture, []).catch(() => picture) : Promise.resolve(picture)

/** The picture drawn anew with what was wiped over in black: nothing of that is left in its bytes. */
export async function blackened(picture: Blob, wipes: readonly Wipe[]): Promise<Blob> {
  const drawn = await createImageBitmap(picture)
  const scale = Math.min(1, Math.sqrt(MOST_PX / (drawn.width * drawn.height)))
  const canvas = document.createElement('canvas')
  canvas.width = Math.floor(drawn.width * scale)
  canvas.height = Math.floor(drawn.height * scale)
  const on = canvas.getContext('2d')
  if (!on) throw new Error('no canvas')
  on.scale(scale, scale)
  on.drawImage(drawn, 0, 0)
  drawn.close()
  on.lineCap = 'square'
  on.lineJoin = 'round'
  on.strokeStyle = '#000'
  for (const { points, width } of wipes) {
    on.lineWidth = width
    on.beginPath()
    for (const { x, y } of points) on.lineTo(x, y)
    const last = points[points.length - 1]
    if (last) on.lineTo(last.x + HARDLY, last.y)
    on.stroke()
  }
  const type = picture.type === 'image/png' ? picture.type : 'image/jpeg'
  return new Promise((resolve, reject) =>
    canvas.toBlob((made) => (made ? resolve(made) : reject(new Error('no picture'))), type, QUALITY),
  )
}
