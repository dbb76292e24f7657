/** How a file left the app. `left`: she closed the share sheet. */
export type HandedOver = 'shared' | 'downloaded' | 'left'

/** A text that is JSON, to be handed to another app or person. */
export interface OutgoingFile {
  /** Without its ending. */
  readonly name: string
  readonly text: string
}

/**
 * Hands a file over by the device's own share sheet, or downloads it where there is none. Browsers share plain text
 * more readily than JSON, so a file that may not go as `.json` goes as `.txt`; what it says is the same.
 */
export async function handOver({ name, text }: OutgoingFile): Promise<HandedOver> {
  const json = new File([text], `${name}.json`, { type: 'application/json' })
  const plain = new File([text], `${name}.txt`, { type: 'text/plain' })
  return handOverFile(json, plain)
}

/** The same for any file. `instead`: says the same in a kind that browsers share more readily. */
export async function handOverFile(file: File, ...instead: readonly File[]): Promise<HandedOver> {
  const shareable = [file, ...instead].find((each) => navigator.canShare?.({ files: [each] }))
  if (shareable) {
    try {
      await navigator.share({ files: [shareable] })
      return 'shared'
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'left'
      // Some browsers promise to share what they then refuse.
    }
  }
  download(file)
  return 'downloaded'
}

function download(file: File): void {
  const url = URL.createObjectURL(file)
  const link = document.createElement('a')
  link.href = url
  link.download = file.name
  link.click()
  // The browser has taken the file up by the next minute, however slow the phone is.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** A file's name from a title: letters, digits and hyphens, which every device takes. */
export function fileName(title: string, otherwise: string): string {
  const name = title
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60)
  return name || otherwise
}
