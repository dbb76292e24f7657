import { Route, Switch } from 'wouter-preact'
import { ButtonLink } from '../parts/button.tsx'
import { Screen } from '../parts/screen.tsx'
import { StartScreen } from '../screens/check/start-screen.tsx'
import { words } from '../words/words.ts'
import { lazyScreen } from './lazy-screen.tsx'

const Make = lazyScreen(() => import('../screens/check/make-screen.tsx').then((m) => m.MakeScreen))
const Measures = lazyScreen(() =>
  import('../screens/check/measures-screen.tsx').then((m) => m.MeasuresScreen),
)
const Cloth = lazyScreen(() => import('../screens/check/cloth-screen.tsx').then((m) => m.ClothScreen))
const Flaws = lazyScreen(() => import('../screens/check/flaws-screen.tsx').then((m) => m.FlawsScreen))
const Kept = lazyScreen(() => import('../screens/check/kept-screen.tsx').then((m) => m.KeptScreen))
const Verdict = lazyScreen(() => import('../screens/check/verdict-screen.tsx').then((m) => m.VerdictScreen))
const Patterns = lazyScreen(() =>
  import('../screens/patterns/patterns-screen.tsx').then((m) => m.PatternsScreen),
)
const OnePattern = lazyScreen(() =>
  import('../screens/patterns/pattern-screen.tsx').then((m) => m.PatternScreen),
)
const EditPattern = lazyScreen(() => import('../screens/patterns/edit-screen.tsx').then((m) => m.EditScreen))
const EditPiece = lazyScreen(() => import('../screens/patterns/piece-screen.tsx').then((m) => m.PieceScreen))
const Stash = lazyScreen(() => import('../screens/stash/stash-screen.tsx').then((m) => m.StashScreen))
const OneGarment = lazyScreen(() =>
  import('../screens/stash/garment-screen.tsx').then((m) => m.GarmentScreen),
)
const NewCloth = lazyScreen(() =>
  import('../screens/stash/new-cloth-screen.tsx').then((m) => m.NewClothScreen),
)
const Notions = lazyScreen(() => import('../screens/notions/notions-screen.tsx').then((m) => m.NotionsScreen))
const OneNotion = lazyScreen(() => import('../screens/notions/notion-screen.tsx').then((m) => m.NotionScreen))
const Strips = lazyScreen(() => import('../screens/notions/strips-screen.tsx').then((m) => m.StripsScreen))
const Projects = lazyScreen(() =>
  import('../screens/projects/projects-screen.tsx').then((m) => m.ProjectsScreen),
)
const NewProject = lazyScreen(() =>
  import('../screens/projects/new-project-screen.tsx').then((m) => m.NewProjectScreen),
)
const OneProject = lazyScreen(() =>
  import('../screens/projects/project-screen.tsx').then((m) => m.ProjectScreen),
)
const Donors = lazyScreen(() => import('../screens/projects/donors-screen.tsx').then((m) => m.DonorsScreen))
const LayOn = lazyScreen(() => import('../screens/projects/lay-on-screen.tsx').then((m) => m.LayOnScreen))
const CutSheet = lazyScreen(() =>
  import('../screens/cut-sheet/cut-sheet-screen.tsx').then((m) => m.CutSheetScreen),
)
const LookFor = lazyScreen(() =>
  import('../screens/look-for/look-for-screen.tsx').then((m) => m.LookForScreen),
)
const Settings = lazyScreen(() =>
  import('../screens/settings/settings-screen.tsx').then((m) => m.SettingsScreen),
)
const Yours = lazyScreen(() => import('../screens/settings/yours-screen.tsx').then((m) => m.YoursScreen))
const Received = lazyScreen(() =>
  import('../screens/open-check/received-screen.tsx').then((m) => m.ReceivedScreen),
)
const OpenCheck = lazyScreen(() =>
  import('../screens/open-check/open-check-screen.tsx').then((m) => m.OpenCheckScreen),
)

/** Which address shows which screen. */
export function Routes() {
  return (
    <Switch>
      <Route path="/" component={StartScreen} />
      <Route path="/check/make" component={Make} />
      <Route path="/check/measures/:measure?" component={Measures} />
      <Route path="/check/cloth" component={Cloth} />
      <Route path="/check/flaws" component={Flaws} />
      <Route path="/check/verdict" component={Verdict} />
      <Route path="/check/kept" component={Kept} />
      <Route path="/patterns" component={Patterns} />
      <Route path="/patterns/:id" component={OnePattern} />
      <Route path="/patterns/:id/edit" component={EditPattern} />
      <Route path="/patterns/:id/piece/:piece" component={EditPiece} />
      <Route path="/stash" component={Stash} />
      <Route path="/stash/new-cloth" component={NewCloth} />
      <Route path="/stash/:id" component={OneGarment} />
      <Route path="/projects" component={Projects} />
      <Route path="/projects/new/:pattern?/:size?/:version?" component={NewProject} />
      <Route path="/projects/:id" component={OneProject} />
      <Route path="/projects/:id/lay/:garment/:role?" component={LayOn} />
      <Route path="/projects/:id/cloth/:role?" component={Donors} />
      <Route path="/projects/:id/table" component={CutSheet} />
      <Route path="/notions" component={Notions} />
      <Route path="/notions/:id" component={OneNotion} />
      <Route path="/strips" component={Strips} />
      <Route path="/look-for" component={LookFor} />
      <Route path="/settings" component={Settings} />
      <Route path="/settings/yours/:done?" component={Yours} />
      <Route path="/open-check" component={OpenCheck} />
      <Route path="/received" component={Received} />
      <Route component={Nowhere} />
    </Switch>
  )
}

function Nowhere() {
  return (
    <Screen title={words.shell.nowhere}>
      <ButtonLink look="main" to="/">
        {words.shell.toStart}
      </ButtonLink>
    </Screen>
  )
}
