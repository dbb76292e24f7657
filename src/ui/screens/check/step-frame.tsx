import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { ButtonLink } from '../../parts/button.tsx'
import { Screen } from '../../parts/screen.tsx'
import { STEPS, type Step } from '../../state/check-draft.ts'
import { draft, tell } from '../../state/check-state.ts'
import { words } from '../../words/words.ts'
import './step-frame.css'
import { VerdictStrip } from './verdict-strip.tsx'

interface StepFrameProps {
  readonly step: Step
  readonly title: string
  /** In place of the verdict and the way on. */
  readonly foot?: ComponentChildren
  readonly children: ComponentChildren
}

/** A step of the check: the way back, the steps, and at the thumb the verdict as it stands and the way on. */
export function StepFrame({ step, title, foot, children }: StepFrameProps) {
  useEffect(() => {
    if (draft.peek().step !== step) tell({ step })
  }, [step])
  const at = STEPS.indexOf(step)
  const before = STEPS[at - 1]
  return (
    <Screen
      title={title}
      back={before ? `/check/${before}` : '/'}
      foot={foot ?? <StepFoot next={STEPS[at + 1]} />}
    >
      <nav aria-label={words.check.steps}>
        <ol class="steps">
          {STEPS.map((each) => (
            <li key={each}>
              <Link href={`/check/${each}`} aria-current={each === step ? 'step' : undefined}>
                {words.check.stepNames[each]}
              </Link>
            </li>
          ))}
        </ol>
      </nav>
      {children}
    </Screen>
  )
}

function StepFoot({ next }: { next: Step | undefined }) {
  return (
    <div class="foot-row">
      <VerdictStrip />
      {next && (
        <ButtonLink look="main" to={`/check/${next}`}>
          {words.check.next}
        </ButtonLink>
      )}
    </div>
  )
}
