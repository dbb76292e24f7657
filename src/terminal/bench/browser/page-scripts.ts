/** What runs in the page itself, as text: nothing here knows the browser's types. */

/** Writes garments into the store that the app has made. */
export const storing = (garments: unknown) => `new Promise((resolve, reject) => {
  const open = indexedDB.open('cutworth')
  open.onerror = () => reject(open.error)
  open.onsuccess = () => {
    const writing = open.result.transaction('garments', 'readwrite')
    for (const [k, value] of ${JSON.stringify(garments)}.entries()) {
      writing.objectStore('garments').put({ id: value.id, value, keptAt: k, changedAt: k })
    }
    writing.oncomplete = () => {
      open.result.close()
      resolve()
    }
    writing.onerror = () => reject(writing.error)
  }
})`

/** Notes every task of the page's thread that is over 50 ms; the browser tells of no shorter ones. */
export const WATCH_TASKS = `{
  globalThis.longTasks = []
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) globalThis.longTasks.push(duration)
  }).observe({ type: 'longtask' })
}`

/** The longest of those noted since it was asked last, ms; 0: none. */
export const TAKE_LONGEST = 'Math.max(0, ...globalThis.longTasks.splice(0))'

/** Scrolls the screen to the far end and back, a frame after each step. */
export const SCROLL_FAR = `(async () => {
  const scroller = document.querySelector('.screen-scroll')
  for (const way of [1, -1]) {
    for (let step = 0; step < 40; step++) {
      scroller.scrollBy(0, way * 500)
      await new Promise((resolve) => requestAnimationFrame(resolve))
    }
  }
})()`
