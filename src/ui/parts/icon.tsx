/** Line drawings on a 24 × 24 ground, drawn for this app; colour and size come from the text around them. */
const PATHS = {
  check: 'M3 8h18v8H3zM7 8v3M11 8v4M15 8v3M19 8v2M8 20l3 2 5-5',
  stash: 'M4 18h16v3H4zM5 13h14l1 5H4zM6 8h12l1 5H5zM8 8c0-3 2-5 4-5s4 2 4 5',
  patterns: 'M7 3h6l1 5c0 2 2 3 5 3v10H5V3zM10 18v-7M8 13l2-2 2 2',
  settings: 'M4 7h9M17 7h3M4 17h3M11 17h9M15 4.8v4.4M9 14.8v4.4M4 12h16',
  card: 'M3 6h18v12H3zM3 10h18M6 15h4',
  drag: 'M12 3v18M8 7l4-4 4 4M8 17l4 4 4-4',
  back: 'M14 5l-7 7 7 7',
  onward: 'M10 5l7 7-7 7',
  plus: 'M12 5v14M5 12h14',
  minus: 'M5 12h14',
  close: 'M6 6l12 12M18 6L6 18',
  tick: 'M5 13l4.5 4.5L19 7',
  fits: 'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19zM7.5 12.5l3 3 6-7',
  doubt: 'M12 3L2 20.5h20zM12 10v5M12 17.4v.6',
  cannot: 'M8 2.5h8L21.5 8v8L16 21.5H8L2.5 16V8zM8 12h8',
  open: 'M4 4h4M12 4h4M20 4v4M20 12v4M20 20h-4M12 20H8M4 20v-4M4 12V8M9.5 10a2.5 2.5 0 1 1 3.6 2.2c-.8.4-1.1.9-1.1 1.8M12 16.6v.5',
  running: 'M7 3h10M7 21h10M8 3c0 5 8 6 8 9s-8 4-8 9M16 3c0 5-8 6-8 9s8 4 8 9',
  stop: 'M6 6h12v12H6z',
  remove: 'M5 7h14M10 7V4h4v3M7 7l1 13h8l1-13',
  care: 'M12 3l9 17H3zM12 9v5M12 16.6v.5',
  offline: 'M3 9a13 13 0 0 1 18 0M6.5 13a8 8 0 0 1 11 0M12 18.5v.1M4 4l16 16',
  keep: 'M5 8h14v12H5zM8 8a4 4 0 0 1 8 0M9 14l2.2 2.2L15.5 12',
  leave: 'M13 4H5v16h8M10 12h11M17 8l4 4-4 4',
  list: 'M4 5h3v3H4zM10 6.5h10M4 11h3v3H4zM10 12.5h10M4 17h3v3H4zM10 18.5h10',
  cut: 'M6 9a3 3 0 1 1 0-6 3 3 0 0 1 0 6zM6 21a3 3 0 1 1 0-6 3 3 0 0 1 0 6zM8.2 8L20 18M8.2 16L20 6',
  projects: 'M6 3h12v18H6zM9 3v3h6V3M9 10h6M9 14h6M9 18h3',
  photo: 'M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z',
  print: 'M7 9V3h10v6M7 17H4V9h16v8h-3M7 14h10v7H7z',
  share: 'M12 15V3M7.5 7.5L12 3l4.5 4.5M5 12v9h14v-9',
  turned: 'M12 3v18M9 7L3 12l6 5zM15 7l6 5-6 5z',
  measure: 'M3 8h18v8H3zM7 8v3M11 8v4M15 8v3M19 8v2',
  round: 'M12 4a8 8 0 1 0 0 16 8 8 0 0 0 0-16z',
  box: 'M4 6h16v12H4z',
  line: 'M4 17c4-12 7 6 10-4 1-4 3-6 6-6',
} as const

export type IconName = keyof typeof PATHS

/** Decoration beside a word that says the same; hidden from screen readers. */
export function Icon({ name, size = 24 }: { name: IconName; size?: number }) {
  return (
    <svg
      class="icon"
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
      focusable="false"
    >
      <path d={PATHS[name]} />
    </svg>
  )
}
