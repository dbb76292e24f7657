/** Where the made-up camera says it stood: degrees, minutes, seconds north and east. */
const STOOD = { north: [48, 51, 29], east: [2, 17, 40] } as const

/** Types of a field in TIFF 6.0, section 2. */
const [ASCII, SHORT, LONG, RATIONAL] = [2, 3, 4, 5]

/**
 * The JPEG with what a phone's camera writes into its file: how it was held (TIFF 6.0's tag 274, Orientation) and where
 * it stood (Exif 2.32, section 4.6.6, GPS IFD), in an APP1 segment right after the start of the image (section 4.7.2).
 */
export function withExif(jpeg: Uint8Array, orientation: number): Uint8Array {
  const tiff = tiffOf(orientation)
  const head = [0xff, 0xe1, (tiff.length + 8) >> 8, (tiff.length + 8) & 0xff, ...ascii('Exif\0\0')]
  return Uint8Array.from([...jpeg.subarray(0, 2), ...head, ...tiff, ...jpeg.subarray(2)])
}

/** Little-endian: the header, IFD 0 with two fields, the GPS IFD with four, and its six rationals. */
function tiffOf(orientation: number): Uint8Array {
  const [ifd0, gps, figures] = [8, 38, 92]
  const view = new DataView(new ArrayBuffer(figures + 48))
  for (const [k, byte] of ascii('II*\0').entries()) view.setUint8(k, byte)
  view.setUint32(4, ifd0, true)
  writeFields(view, ifd0, [
    { tag: 0x0112, type: SHORT, count: 1, value: orientation },
    { tag: 0x8825, type: LONG, count: 1, value: gps },
  ])
  writeFields(view, gps, [
    { tag: 1, type: ASCII, count: 2, value: 'N'.charCodeAt(0) },
    { tag: 2, type: RATIONAL, count: 3, value: figures },
    { tag: 3, type: ASCII, count: 2, value: 'E'.charCodeAt(0) },
    { tag: 4, type: RATIONAL, count: 3, value: figures + 24 },
  ])
  for (const [k, figure] of [...STOOD.north, ...STOOD.east].entries()) {
    view.setUint32(figures + 8 * k, figure, true)
    view.setUint32(figures + 8 * k + 4, 1, true)
  }
  return new Uint8Array(view.buffer)
}

interface TiffField {
  readonly tag: number
  readonly type: number
  readonly count: number
  /** Itself if it is short, else where it is. */
  readonly value: number
}

function writeFields(view: DataView, at: number, fields: readonly TiffField[]): void {
  view.setUint16(at, fields.length, true)
  for (const [k, { tag, type, count, value }] of fields.entries()) {
    const start = at + 2 + 12 * k
    view.setUint16(start, tag, true)
    view.setUint16(start + 2, type, true)
    view.setUint32(start + 4, count, true)
    view.setUint32(start + 8, value, true)
  }
}

function ascii(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0))
}

/** The markers of a JPEG's segments up to its first scan (ITU-T T.81, B.1.1.4): `FFE1` is where Exif and XMP stand. */
export function jpegMarkers(jpeg: Uint8Array): readonly string[] {
  const markers: string[] = []
  let at = 2
  while (at + 4 <= jpeg.length && jpeg[at] === 0xff && markers.at(-1) !== 'FFDA') {
    markers.push(`FF${(jpeg[at + 1] ?? 0).toString(16).toUpperCase().padStart(2, '0')}`)
    at += 2 + ((jpeg[at + 2] ?? 0) << 8) + (jpeg[at + 3] ?? 0)
  }
  return markers
}
