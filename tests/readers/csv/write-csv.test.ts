import { describe, expect, it } from 'vitest'
import { writeCsv } from '../../../src/readers/csv/write-csv.ts'

const withoutMark = (text: string) => text.replace(/^\ufeff/, '')

describe('CSV', () => {
  it('is written as RFC 4180, section 2, has it', () => {
    // The RFC's own examples: rule 2 (lines), rule 6 (a line break in quotes), rule 7 (a quote doubled).
    expect(
      withoutMark(
        writeCsv(
          [
            ['aaa', 'bbb', 'ccc'],
            ['zzz', 'yyy', 'xxx'],
          ],
          '.',
        ),
      ),
    ).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')
    expect(withoutMark(writeCsv([['aaa', 'b\r\nbb', 'ccc']], '.'))).toBe('aaa,"b\r\nbb",ccc\r\n')
    expect(withoutMark(writeCsv([['aaa', 'b"bb', 'ccc']], '.'))).toBe('aaa,"b""bb",ccc\r\n')
    expect(withoutMark(writeCsv([['a,b', null, '']], '.'))).toBe('"a,b",,\r\n')
  })

  it('begins with the mark by which spreadsheets know UTF-8', () => {
    expect([...new TextEncoder().encode(writeCsv([['é']], '.'))].slice(0, 3)).toEqual([0xef, 0xbb, 0xbf])
  })

  it('writes decimals with the sign asked for, and with a comma has semicolons between cells', () => {
    expect(withoutMark(writeCsv([[36.5, -0.1234, 7, 'a,b', 'c;d']], ','))).toBe('36,5;-0,123;7;a,b;"c;d"\r\n')
    expect(withoutMark(writeCsv([[36.5, 1e-9]], '.'))).toBe('36.5,0\r\n')
  })

  it('lets no text pass for a formula', () => {
    // The beginnings that OWASP's page on CSV injection lists.
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx'])
      expect(withoutMark(writeCsv([[text]], '.')).replace(/^"/, '')).toMatch(/^'/)
    expect(withoutMark(writeCsv([[-1]], '.'))).toBe('-1\r\n')
  })
})
