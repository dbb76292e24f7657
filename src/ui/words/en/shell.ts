export const shell = {
  appName: 'Cutworth',
  skip: 'Skip to the content',
  places: 'Places',
  check: 'Check',
  stash: 'Stash',
  projects: 'Projects',
  patterns: 'Patterns',
  settings: 'Settings',
  lookFor: 'What to look for',
  back: 'Back',
  offline: 'No network. Everything here still works.',
  offlineInPart: 'No network, and not everything is here yet: what you have not opened may not open.',
  kept: 'Works without network from now on.',
  putAway: 'Put this away',
  update: 'A newer Cutworth is ready.',
  updateNow: 'Use it now',
  trouble: {
    full: 'No room is left on this device. Your last change is not stored, all before it is. Make room, then do it again.',
    newer: 'This was stored by a newer Cutworth and stays as it is. What you enter now is not stored.',
    held: 'Cutworth is open in another tab, in an older version. Close that tab to go on here.',
    lost: 'This tab can store nothing more; what was stored is safe. A newer Cutworth may be open in another tab.',
    none: 'This browser stores nothing for this page, as in a private window. What you enter is gone once you close it.',
    other: 'What you changed last could not be stored on this device.',
  },
  unread: 'What you have stored cannot be read here now. It stays as it is.',
  storeAgain: 'Try again',
  loadAnew: 'Load anew',
  later: 'Later',
  loading: 'Getting this ready …',
  loadFailed: 'This part could not be loaded. Check the network and try again.',
  retry: 'Try again',
  nowhere: 'There is nothing at this address.',
  toStart: 'Go to Check',
} as const

/** Cautions by id, as patterns name them, and those of the check itself. */
export const cautions: Readonly<Record<string, string>> = {
  'child-cords':
    'Cords and ties on children’s clothes can catch and choke. Leave them off at neck and hood; keep to the rules where you live, and ask someone qualified if in doubt.',
  'small-parts':
    'Studs and buttons can come off and choke a small child. Keep to the rules where you live, and ask someone qualified if in doubt.',
  'sleepwear-flame':
    'Children’s sleepwear must meet rules on burning. Re-cut cloth does not by itself; keep to the rules where you live.',
  unwashed:
    'Second-hand: feel pockets and seams for pins, and wash it before you cut. It may shrink in that wash.',
  blades: 'Cut away from your hand, close the cutter, count the pins back in, switch the iron off.',
}
