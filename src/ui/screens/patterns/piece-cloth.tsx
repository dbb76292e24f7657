import { useSignal } from '@preact/signals'
import {
  PATTERN_LIMITS,
  type Pattern,
  type PatternPiece,
  withWornBeside,
  wornBeside,
} from '../../../core/patterns/index.ts'
import { Choice } from '../../parts/choice.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { allowBias, change, changePiece } from '../../state/edit-pattern.ts'
import { pieceName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

const MIRRORS = ['none', 'pairs', 'free'] as const
const GRAINS = ['along', 'either', 'bias', 'any'] as const
const OWN_ROLE = 'own role'

interface PieceClothProps {
  readonly pattern: Pattern
  readonly piece: PatternPiece
}

/** How many copies, which way they lie, and what their cloth must do. */
export function PieceCloth({ pattern, piece }: PieceClothProps) {
  const set = (part: Partial<PatternPiece>) => changePiece(pattern.id, piece.id, part)
  const { copies, mirror, grain, needs } = piece
  const others = pattern.pieces.filter(({ id }) => id !== piece.id)
  return (
    <section class="stack">
      <NumberField
        id="copies"
        label={words.patterns.howMany}
        value={copies}
        unit=""
        least={1}
        most={PATTERN_LIMITS.copies}
        step={1}
        whole
        onValue={(count) => set({ copies: count ?? 1 })}
      />
      <Choice
        name="mirror"
        label={words.patterns.mirror}
        hint={words.patterns.mirrorHint[mirror]}
        options={MIRRORS.map((value) => ({ value, label: words.patterns.mirrors[value] }))}
        value={mirror}
        // One piece in mirrored pairs can only mean one pair.
        onChoose={(to) => set({ mirror: to, ...(to === 'pairs' && copies === 1 && { copies: 2 }) })}
      />
      {mirror === 'pairs' && copies % 2 === 1 && <p class="field-query">{words.patterns.pairsOdd}</p>}
      <Picker
        id="grain"
        label={words.patterns.grain}
        hint={words.patterns.grainHint[grain]}
        options={GRAINS.map((value) => ({ value, label: words.patterns.grains[value] }))}
        value={grain}
        onPick={(to) => set({ grain: to })}
      />
      {(grain === 'along' || grain === 'either') && (
        <Tick
          label={words.patterns.biasToo}
          hint={words.patterns.biasTooHint}
          checked={piece.biasToo === true}
          onChange={(allowed) => allowBias(pattern.id, piece.id, allowed)}
        />
      )}
      {grain !== 'any' && (
        <NumberField
          id="tilt"
          label={words.patterns.tilt}
          hint={words.patterns.tiltHint}
          value={piece.tilt}
          unit={words.patterns.degrees}
          least={0}
          most={PATTERN_LIMITS.tilt}
          step={1}
          onValue={(tilt) => set({ tilt: tilt ?? 0 })}
        />
      )}
      <NumberField
        id="needs-across"
        label={words.patterns.stretchAcross}
        hint={words.patterns.stretchHint}
        value={needs.across}
        unit={words.parts.percent}
        least={0}
        most={PATTERN_LIMITS.stretch}
        step={5}
        onValue={(across) => set({ needs: { ...needs, across: across ?? 0 } })}
      />
      <NumberField
        id="needs-along"
        label={words.patterns.stretchAlong}
        value={needs.along}
        unit={words.parts.percent}
        least={0}
        most={PATTERN_LIMITS.stretch}
        step={5}
        onValue={(along) => set({ needs: { ...needs, along: along ?? 0 } })}
      />
      {others.length > 0 && (
        <Picker
          id="beside"
          label={words.patterns.beside}
          hint={words.patterns.besideHint}
          options={[
            { value: '', label: words.patterns.besideNone },
            ...others.map((other) => ({ value: other.id, label: pieceName(pattern, other) })),
          ]}
          value={wornBeside(pattern, piece)[0]?.id ?? ''}
          onPick={(other) => change(pattern.id, (now) => withWornBeside(now, piece.id, other || null))}
        />
      )}
      <Role role={piece.role} onRole={(role) => set({ role })} />
      <Tick
        label={words.patterns.optional}
        checked={piece.optional}
        onChange={(optional) => set({ optional })}
      />
      <Tick
        label={words.patterns.againstPile}
        checked={piece.surface === 'any'}
        onChange={(any) => set({ surface: any ? 'any' : 'as-panel' })}
      />
    </section>
  )
}

/** Which of the pattern's cloths the piece is cut from: a usual one, or one she names. */
function Role({ role, onRole }: { role: string; onRole: (role: string) => void }) {
  const usual = Object.entries(words.check.roleNames)
  const naming = useSignal(!usual.some(([id]) => id === role))
  return (
    <>
      <Picker
        id="role"
        label={words.patterns.role}
        options={[
          ...usual.map(([value, label]) => ({ value, label })),
          { value: OWN_ROLE, label: words.patterns.roleOwn },
        ]}
        value={naming.value ? OWN_ROLE : role}
        onPick={(picked) => {
          naming.value = picked === OWN_ROLE
          onRole(picked === OWN_ROLE ? '' : picked)
        }}
      />
      {naming.value && (
        <TextField id="role-name" label={words.patterns.roleName} value={role} onValue={onRole} />
      )}
    </>
  )
}
