/** Longest side of a kept photo, pixels: enough to tell a stain from a shadow on a phone. */
const LONGEST_SIDE = 1280

/** JPEG quality at which cloth still looks like cloth; some 150 kB a photo. */
const QUALITY = 0.8

/** A photo ready to be kept. */
export interface ShrunkPhoto {
  readonly picture: Blob
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/**
 * The photo upright, no larger than needed, and as a new JPEG of nothing but its pixels: where and when it was taken, which
 * cameras write into their files, is not carried over. Rejects when the file is no picture that the browser can read.
 */
export async function shrinkPhoto(file: Blob): Promise<ShrunkPhoto> {
  const upright = await createImageBitmap(file, { imageOrientation: 'from-image' })
  try {
    const scale = Math.min(1, LONGEST_SIDE / Math.max(upright.width, upright.height))
    const width = Math.max(1, Math.round(upright.width * scale))
    const height = Math.max(1, Math.round(upright.height * scale))
    return { picture: await asJpeg(upright, width, height), width, height }
  } finally {
    upright.close()
  }
}

async function asJpeg(image: ImageBitmap, width: number, height: number): Promise<Blob> {
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  const context = canvas.getContext('2d')
  if (!context) throw new Error('this browser cannot draw pictures')
  context.imageSmoothingQuality = 'high'
  context.drawImage(image, 0, 0, width, height)
  return new Promise((resolve, reject) => {
    const give = (blob: Blob | null) => (blob ? resolve(blob) : reject(new Error('the picture is too large')))
    canvas.toBlob(give, 'image/jpeg', QUALITY)
  })
}
