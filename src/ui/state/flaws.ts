import type { Mm } from '../../core/base/units.ts'
import type { FlawKind, FlawShape, MarkedFlaw } from '../../core/garments/index.ts'
import type { Box, Point } from '../../core/geometry/types.ts'

/** Sizes a new mark starts with: about a coin, a small print, the width of a seam. */
const NEW_RADIUS: Mm = 15
const NEW_BOX: Mm = 60
const NEW_LINE: Mm = 60
const NEW_WIDTH: Mm = 15

/** Nothing smaller can be seen or cut round. */
export const LEAST_MARK: Mm = 2

export type FlawForm = FlawShape['form']

/** A mark of usual size at a point of its panel. */
export function newFlaw(id: string, panel: string, kind: FlawKind, form: FlawForm, at: Point): MarkedFlaw {
  return { id, panel, kind, shape: newShape(form, at) }
}

function newShape(form: FlawForm, [x, y]: Point): FlawShape {
  switch (form) {
    case 'round':
      return { form, centre: [x, y], radius: NEW_RADIUS }
    case 'box':
      return { form, from: [x - NEW_BOX / 2, y - NEW_BOX / 2], to: [x + NEW_BOX / 2, y + NEW_BOX / 2] }
    case 'line':
      return {
        form,
        points: [
          [x - NEW_LINE / 2, y],
          [x + NEW_LINE / 2, y],
        ],
        width: NEW_WIDTH,
      }
  }
}

/** A free line through these points. */
export function drawnLine(points: readonly Point[]): FlawShape {
  return { form: 'line', points, width: NEW_WIDTH }
}

export function moved(shape: FlawShape, dx: Mm, dy: Mm): FlawShape {
  const by = ([x, y]: Point): Point => [x + dx, y + dy]
  switch (shape.form) {
    case 'round':
      return { ...shape, centre: by(shape.centre) }
    case 'box':
      return { ...shape, from: by(shape.from), to: by(shape.to) }
    case 'line':
      return { ...shape, points: shape.points.map(by) }
  }
}

/** Where its handle for sizing sits. */
export function handleOf(shape: FlawShape): Point {
  switch (shape.form) {
    case 'round':
      return [shape.centre[0] + shape.radius, shape.centre[1]]
    case 'box':
      return [Math.max(shape.from[0], shape.to[0]), Math.max(shape.from[1], shape.to[1])]
    case 'line':
      return shape.points.at(-1) ?? [0, 0]
  }
}

/** The shape once its handle has been dragged to a point. */
export function sizedTo(shape: FlawShape, [x, y]: Point): FlawShape {
  switch (shape.form) {
    case 'round': {
      const radius = Math.hypot(x - shape.centre[0], y - shape.centre[1])
      return { ...shape, radius: Math.max(LEAST_MARK, radius) }
    }
    case 'box': {
      const left = Math.min(shape.from[0], shape.to[0])
      const bottom = Math.min(shape.from[1], shape.to[1])
      return {
        ...shape,
        from: [left, bottom],
        to: [Math.max(left + LEAST_MARK, x), Math.max(bottom + LEAST_MARK, y)],
      }
    }
    case 'line':
      return { ...shape, points: [...shape.points.slice(0, -1), [x, y]] }
  }
}

/** A figure of a mark that can be typed, measured from the panel's left and lower edges. */
export interface FlawFigure {
  readonly id: 'fromLeft' | 'fromBottom' | 'across' | 'tall' | 'wide' | 'toLeft' | 'toBottom'
  readonly value: Mm
  readonly with: (value: Mm) => FlawShape
}

/** What can be typed of a mark: everything that dragging can do. */
export function figuresOf(shape: FlawShape, panel: Box): readonly FlawFigure[] {
  const [x, y] = anchorOf(shape)
  const place: readonly FlawFigure[] = [
    { id: 'fromLeft', value: x - panel.minX, with: (value) => moved(shape, panel.minX + value - x, 0) },
    { id: 'fromBottom', value: y - panel.minY, with: (value) => moved(shape, 0, panel.minY + value - y) },
  ]
  return [...place, ...sizesOf(shape, panel)]
}

function sizesOf(shape: FlawShape, panel: Box): readonly FlawFigure[] {
  if (shape.form === 'round') {
    return [{ id: 'across', value: shape.radius * 2, with: (value) => ({ ...shape, radius: value / 2 }) }]
  }
  const [x, y] = anchorOf(shape)
  const [right, top] = handleOf(shape)
  if (shape.form === 'box') {
    return [
      { id: 'across', value: right - x, with: (value) => sizedTo(shape, [x + value, top]) },
      { id: 'tall', value: top - y, with: (value) => sizedTo(shape, [right, y + value]) },
    ]
  }
  return [
    { id: 'toLeft', value: right - panel.minX, with: (value) => sizedTo(shape, [panel.minX + value, top]) },
    { id: 'toBottom', value: top - panel.minY, with: (value) => sizedTo(shape, [right, panel.minY + value]) },
    { id: 'wide', value: shape.width, with: (value) => ({ ...shape, width: value }) },
  ]
}

/** Centre of a circle, lower left corner of a box, start of a line. */
function anchorOf(shape: FlawShape): Point {
  switch (shape.form) {
    case 'round':
      return shape.centre
    case 'box':
      return [Math.min(shape.from[0], shape.to[0]), Math.min(shape.from[1], shape.to[1])]
    case 'line':
      return shape.points[0] ?? [0, 0]
  }
}
