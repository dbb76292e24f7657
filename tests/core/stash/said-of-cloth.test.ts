import { describe, expect, it } from 'vitest'
import { colourWords, fibreNames, saidOf } from '../../../src/core/stash/said-of-cloth.ts'

describe('what was said of a cloth', () => {
  it('gives the fibres of a label, however their shares are written', () => {
    for (const label of [
      '95 % cotton, 5 % elastane',
      '95% Cotton 5% Elastane',
      'cotton/elastane 95/5',
      'COTTON 95, ELASTANE 5',
      'cotton;\nelastane; cotton',
    ])
      expect(fibreNames(label)).toEqual(['cotton', 'elastane'])
    expect(fibreNames('100 % organic  cotton')).toEqual(['organic cotton'])
    expect(fibreNames('80 % Schurwolle, 20 % Polyamid')).toEqual(['schurwolle', 'polyamid'])
    expect(fibreNames('100 %')).toEqual([])
    expect(fibreNames('')).toEqual([])
  })

  it('gives the words of a colour, each once', () => {
    expect(colourWords('Navy and white, navy')).toEqual(['navy', 'and', 'white'])
    expect(colourWords('  ')).toEqual([])
  })

  it('counts by how many each is said, the most said first, equals by the alphabet', () => {
    expect(saidOf([['wool'], ['cotton', 'elastane'], ['cotton'], []])).toEqual([
      { text: 'cotton', count: 2 },
      { text: 'elastane', count: 1 },
      { text: 'wool', count: 1 },
    ])
  })
})
