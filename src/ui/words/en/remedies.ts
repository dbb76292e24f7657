import type { FlawKind } from '../../../core/garments/garment.ts'

/** Changes as orders, so that two can be said in a row; costs as sentences. */
export const remedyWords = {
  title: 'What would save it',
  looking: 'Looking for what would save it…',
  lookingOn: (count: number) => `${found(count)} so far, still looking…`,
  found,
  none: (tried: number) =>
    tried === 1 ? 'The one thing tried does not save it.' : `None of the ${tried} things tried saves it.`,
  noneYet: (tried: number) =>
    tried === 0 ? 'Stopped before anything was tried.' : `Stopped. Nothing saves it among ${tried} tried.`,
  nothingToTry: 'There is nothing left to change that could save it.',
  stop: 'Stop looking',
  again: 'Look again',
  inVain: (count: number) => `Tried in vain: ${count}`,
  taken: 'The check is changed.',
  both: (first: string, second: string) =>
    `${first}, and ${second.charAt(0).toLowerCase()}${second.slice(1)}`,
  asItIs: 'Leave all as it is',
  asItIsCost: 'A way was found after all: nothing needs to change.',
  quoted: (name: string) => `“${name}”`,
  pieces: (count: number) => `${count} pieces`,
  square: (side: string) => `a square with sides of ${side}`,

  tilt: (pieces: string, to: string) => `Let ${pieces} lie up to ${to}° off the grain`,
  tiltMore: (pieces: string, to: string, from: string) =>
    `Let ${pieces} lie up to ${to}° off the grain instead of ${from}°`,
  tiltCost: 'Hangs and stretches a little askew.',
  quarterTurn: (pieces: string) => `Lay ${pieces} crosswise`,
  quarterTurnCost: 'The cloth gives enough that way too, but hangs differently; stripes will run across.',
  narrowerSeams: (from: string, to: string) => `Sew the seams ${to} wide instead of ${from}`,
  narrowerSeamsCost: 'Nothing to let out later. Cloth that frays needs its edges neatened.',
  narrowerHem: (from: string, to: string) => `Turn the hems up ${to} instead of ${from}`,
  narrowerHemCost: 'A light hem that cannot be let down.',
  ownHem: (pieces: string) => `Lay ${pieces} on a finished hem of the garment`,
  ownHemCost: (depth: string) =>
    `Saves a hem ${depth} deep and the sewing of it; the old stitching stays in sight.`,
  ownHemIf: (pieces: string) => `Only if the lower edge of ${pieces} is to be a hem.`,
  unpick: 'Unpick the seams instead of cutting beside them',
  unpickCost: (area: string) => `An evening’s work. Gains as much cloth as ${area}, with its old creases.`,
  mendFlaw: (flaw: string, panel: string, size: string) =>
    `Use the cloth at this mark after all: ${flaw}, ${panel}, the size of ${size}`,
  mendFlawCost: {
    hole: 'Patch or darn it, or let it end under a trim.',
    stain: 'It may show. Cover it, or dye the whole.',
    thin: 'Back it with another layer, or it will wear through.',
    print: 'The print will show.',
    seam: 'A seam will run across a piece.',
    dart: 'Unpick and press it. Its stitch holes and crease may show.',
    pocket: 'Take it off. The cloth below may be darker and pierced.',
    'worn-pile': 'It will look bare there.',
  } satisfies Record<FlawKind, string>,
  takeOff: { 'chest-pocket': 'Take the chest pocket off' } as Readonly<Record<string, string>>,
  takeOffOther: (trait: string) => `Do away with this: ${trait}`,
  takeOffCost: 'The cloth below may be darker and pierced.',
  againstPile: (pieces: string) => `Lay ${pieces} against the pile or print`,
  againstPileCost: 'It will look lighter or darker than the rest; a print stands on its head.',
  biasCut: (pieces: string) => `Cut ${pieces} on the bias`,
  biasCutCost: (percent: string) =>
    `Only if a strip cut on the bias gives ${percent}. What you measured does not tell: pull one between two marks and see. Bias edges grow as they are handled.`,
  join: {
    across: (piece: string, at: string) =>
      `Make ${piece} of two parts, with a seam across, ${at} from its lower end`,
    along: (piece: string, at: string) =>
      `Make ${piece} of two parts, with an upright seam, ${at} from its left edge`,
  },
  joinCost: (count: number, length: string, allowance: string) =>
    count === 1
      ? `One more seam of ${length}, sewn ${allowance} wide.`
      : `${count} more seams of ${length} each, sewn ${allowance} wide.`,
  otherRole: (role: string) => `Cut this from another garment: ${role}`,
  otherPiece: (pieces: string) => `Cut ${pieces} from another garment`,
  otherGarmentCost: (count: number, area: string) =>
    count === 1
      ? `Another garment must yield 1 piece, as much cloth as ${area}.`
      : `Another garment must yield ${count} pieces, as much cloth as ${area}.`,
  otherVersion: (version: string) => `Make the version “${version}”`,
  otherVersionLess: (area: string) => `Takes less cloth, by ${area}.`,
  otherVersionMore: 'Takes no less cloth, but asks less of its stretch.',
  largerSize: (size: string, body: string) => `Make size ${size}, for a body of size ${body}`,
  largerSizeCost: (percent: string) =>
    `It is wider by itself, so that cloth stretching ${percent} passes the same body. It will be longer too: shorten it as it is fitted.`,
  largerSizeLoose:
    'It is as wide without stretch as the smaller one stretched. It will be longer too: shorten it as it is fitted.',
  smallerSize: (size: string) => `Make size ${size}`,
  smallerSizeCost: (down: number) =>
    down === 1 ? 'One size smaller than you chose.' : `${down} sizes smaller than you chose.`,
} as const

function found(count: number): string {
  return count === 1 ? 'One way to save it' : `${count} ways to save it`
}
