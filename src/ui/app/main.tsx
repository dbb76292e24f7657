import { render } from 'preact'
import { followInstallOffer } from '../state/home-screen.ts'
import { startKeeping } from '../state/keeper.ts'
import { startLiveCheck } from '../state/live-check.ts'
import { followPageShown } from '../state/page-shown.ts'
import './base.css'
import { locale } from '../words/locale.ts'
import { followLaunches } from './launches.ts'
import { followNews } from './news-bar.tsx'
import { keepOffline } from './offline.ts'
import './print.css'
import { ready, Shell } from './shell.tsx'
import { followTheme } from './theme.ts'
import './tokens.css'
import { followViewHeight } from './view-height.ts'

const root = document.getElementById('app')
if (root) render(<Shell />, root)
followViewHeight()
followPageShown()
followNews()
followInstallOffer()
startKeeping(locale).then(() => {
  followTheme()
  startLiveCheck()
  followLaunches()
  ready.value = true
})
void keepOffline()
