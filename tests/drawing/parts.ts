/** Views of parts of any size, to try sheets on: a stepped bar with a cross hole and a section, a slotted bushing with a detail, a ground bit. */
import type { Drawing, Mark, View, Worth } from '../../src/drawing/view.ts'
import type { Outline, Point } from '../../src/solid/outline.ts'

const plain = (value: number, prefix?: Worth['prefix']): Worth => ({
  value,
  saying: { say: 'plain' },
  ...(prefix && { prefix }),
})
const plusMinus = (value: number, tolerance: number): Worth => ({ value, saying: { say: 'plusMinus', tolerance } })
const limits = (value: number, lower: number, upper: number, prefix?: Worth['prefix']): Worth => ({
  value,
  saying: { say: 'limits', lower: value + lower, upper: value + upper },
  ...(prefix && { prefix }),
})
const degrees = (value: number, suffix?: string): Worth => ({
  value,
  saying: { say: 'plain' },
  angle: true,
  ...(suffix !== undefined && { suffix }),
})

const outline = (...points: Point[]): Outline => points.map((at) => ({ at }))
const visible = (shape: Outline): Mark => ({ mark: 'outline', kind: 'visible', outline: shape })
const line = (kind: 'visible' | 'centre' | 'thin' | 'break', from: Point, to: Point): Mark => ({
  mark: 'line',
  kind,
  from,
  to,
})
const tangent = (angle: number): number => Math.tan((angle * Math.PI) / 180)

const words = {
  material: 'Free-cutting mild steel',
  heat: 'none',
  finish: 'as machined, oiled',
  job: 'for cider-mill-pulley, bore 24 H7 x 38',
}
const order = (lines: readonly string[]) => [
  { heading: 'ORDER OF WORK', numbered: true, lines: lines.map((said) => [said]) },
]

/** `body` Ø, `shank` Ø, both lengths, cross hole Ø and its distance from the end. */
export function steppedBar(body: number, shank: number, bodyLength: number, overall: number, hole: number): Drawing {
  const [r, s] = [body / 2, shank / 2]
  const start = bodyLength - overall
  const c = Math.min(1, body / 12)
  const axis = bodyLength - hole * 1.2
  const saddle = r - Math.sqrt(r * r - (hole / 2) ** 2)
  const left = axis - hole / 2 - body / 2
  const tap = hole * 0.25
  const front: View = {
    name: 'front',
    place: { is: 'front' },
    metal: [
      { x1: start, y1: -s, x2: 0, y2: s },
      { x1: 0, y1: -r, x2: bodyLength, y2: r },
    ],
    breaks: [
      { from: start + 4, to: -4 },
      { from: 4, to: axis - hole },
    ],
    marks: [
      visible(
        outline(
          [start, -s + c],
          [start + c, -s],
          [0, -s],
          [0, -r],
          [bodyLength - c, -r],
          [bodyLength, -r + c],
          [bodyLength, r - c],
          [bodyLength - c, r],
          [0, r],
          [0, s],
          [start + c, s],
          [start, s - c],
        ),
      ),
      line('visible', [0, -s], [0, s]),
      line('visible', [bodyLength - c, -r], [bodyLength - c, r]),
      line('centre', [start, 0], [bodyLength, 0]),
      { mark: 'arc', kind: 'visible', centre: [axis, 0], radius: hole / 2, from: 0, to: 360 },
      { mark: 'centreMark', centre: [axis, 0], radius: hole / 2 },
      { mark: 'plane', letter: 'A', from: [start, 0], to: [bodyLength, 0], looks: 'down' },
      { mark: 'texture', at: [start / 2, s], out: [0, 1], ra: 1.6 },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'shank',
        worth: {
          ...limits(shank, -0.021, 0, 'Ø'),
          saying: { say: 'limits', lower: shank - 0.021, upper: shank, fit: 'h7' },
        },
        axis: 'y',
        a: -s,
        b: s,
        fromA: start,
        fromB: start,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'diameter',
        worth: limits(body, -0.05, 0, 'Ø'),
        axis: 'y',
        a: -r,
        b: r,
        fromA: bodyLength - c,
        fromB: bodyLength - c,
        side: 'right',
        hangs: [{ hang: 'datum', letter: 'A' }],
      },
      {
        callout: 'linear',
        of: 'bodyLength',
        worth: plain(bodyLength),
        axis: 'x',
        a: 0,
        b: bodyLength,
        fromA: -s,
        fromB: -r + c,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'overall',
        worth: plain(overall),
        axis: 'x',
        a: start,
        b: bodyLength,
        fromA: -s + c,
        fromB: -r + c,
        side: 'bottom',
      },
      {
        callout: 'leader',
        of: 'fillet',
        tips: [
          { at: [0, -r], out: [1, -1] },
          { at: [0, r], out: [1, 1] },
        ],
        lines: [[plain(1, 'R')]],
      },
      {
        callout: 'leader',
        of: 'chamfer',
        tips: [
          { at: [bodyLength - c / 2, r - c / 2], out: [1, 1] },
          { at: [start + c / 2, s - c / 2], out: [-1, 1] },
        ],
        lines: [[plain(c), ' × ', degrees(45), ' both ends']],
      },
    ],
  }
  const cut: View = {
    name: 'A-A',
    title: 'A – A',
    place: { is: 'section', from: 'above', least: body, aligned: false },
    metal: [{ x1: left, y1: -r, x2: bodyLength, y2: r }],
    marks: [
      line('visible', [left, r], [axis - hole / 2, r]),
      line('visible', [left, -r], [axis - hole / 2, -r]),
      line('visible', [axis - hole / 2, -r], [axis - hole / 2, r]),
      line('visible', [axis + hole / 2, -r], [axis + hole / 2, r]),
      ...[1, -1].map((way): Mark => {
        const high = way * r
        return visible(
          outline([axis + hole / 2, way * tap], [axis + hole / 2, high], [bodyLength, high], [bodyLength, way * tap]),
        )
      }),
      line('break', [left, -r], [left, r]),
      line('centre', [left, 0], [bodyLength, 0]),
      line('centre', [axis, -r], [axis, r]),
      line('visible', [axis - hole / 4, r - saddle], [axis + hole / 4, r - saddle]),
      { mark: 'hatch', outlines: [outline([left, -r], [axis - hole / 2, -r], [axis - hole / 2, r], [left, r])] },
      ...[1, -1].map(
        (way): Mark => ({
          mark: 'hatch',
          outlines: [
            outline(
              [axis + hole / 2, way * tap],
              [bodyLength, way * tap],
              [bodyLength, way * r],
              [axis + hole / 2, way * r],
            ),
          ],
        }),
      ),
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'crossHole',
        worth: limits(hole, 0, 0.05, 'Ø'),
        axis: 'x',
        a: axis - hole / 2,
        b: axis + hole / 2,
        fromA: -r,
        fromB: -r,
        side: 'bottom',
        hangs: [{ hang: 'frame', of: 'crossHoleCentral', feature: 'symmetry', value: 0.1, datum: 'A' }],
      },
      {
        callout: 'linear',
        of: 'holeToEnd',
        worth: plusMinus(bodyLength - axis, 0.1),
        axis: 'x',
        a: axis,
        b: bodyLength,
        fromA: r,
        fromB: r,
        side: 'top',
      },
      {
        callout: 'leader',
        of: 'screw',
        tips: [{ at: [bodyLength - hole * 0.4, tap], out: [1, 1] }],
        lines: [
          ['M5-6H through into ', plain(hole, 'Ø')],
          ['drill ', plain(4.2, 'Ø')],
        ],
      },
      {
        callout: 'leader',
        of: 'countersink',
        tips: [{ at: [bodyLength, -tap], out: [1, -1] }],
        lines: [[plain(5.5, 'Ø'), ' × ', degrees(90)]],
      },
      {
        callout: 'leader',
        of: 'mouths',
        small: true,
        tips: [
          { at: [axis - hole / 2, -r], out: [-1, -1] },
          { at: [axis - hole / 2, r], out: [-1, 1] },
        ],
        lines: [[plain(0.3), ' × ', degrees(45), ' both mouths']],
      },
    ],
  }
  return {
    part: 'cutter-bar',
    title: 'Cutter bar',
    number: '20',
    views: [front, cut],
    notes: order([
      'Saw, face to length, centre the shank end; the centre may stay.',
      'Turn the body from the tapped end, fillet at the shoulder, both chamfers.',
      'Cross hole first, in solid metal: find the axis, drill under size, then to size.',
      'From the end drill until it breaks into the cross hole; leave the far wall alone. Countersink, tap.',
    ]),
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        { what: 'Body Ø, whole length', limits: [limits(body, -0.05, 0)] },
        { what: 'Cross hole Ø', limits: [limits(hole, 0, 0.05)] },
        { what: 'Hole centre to end face', limits: [plusMinus(bodyLength - axis, 0.1)] },
        { what: 'Blank slides through', limits: ['by hand'] },
      ],
    },
    block: { ...words, stock: [plain(shank, 'Ø'), ' bar, ', plain(overall + 3), ' long'] },
  }
}

/** Outside Ø, length below the seat, slot width, back wall. */
export function slottedBushing(outside: number, length: number, slotWidth: number, backWall: number): Drawing {
  const [r, collar, h] = [outside / 2, outside / 2 + 6, slotWidth / 2]
  const floor = backWall - r
  const lead = 1.5
  const drop = lead * tangent(15)
  const deep = 0.3
  const wide = 1.2
  const mouth = Math.sqrt(r * r - h * h)
  const bulge = Math.tan((Math.PI - Math.asin(h / r)) / 4)
  const body: Outline = outline(
    [-6, -collar],
    [0, -collar],
    [0, -r + deep],
    [wide - deep, -r + deep],
    [wide, -r],
    [length - lead, -r],
    [length, -r + drop],
    [length, r - drop],
    [length - lead, r],
    [wide, r],
    [wide - deep, r - deep],
    [0, r - deep],
    [0, collar],
    [-6, collar],
  )
  const front: View = {
    name: 'front',
    place: { is: 'front' },
    metal: [
      { x1: -6, y1: -collar, x2: 0, y2: collar },
      { x1: 0, y1: -r, x2: length, y2: r },
    ],
    marks: [
      visible(body),
      line('visible', [-6, h], [length, h]),
      line('visible', [-6, -h], [length, -h]),
      line('visible', [0, h], [0, r]),
      line('visible', [0, -r], [0, -h]),
      line('centre', [-6, 0], [length, 0]),
      { mark: 'plane', letter: 'A', from: [length / 2, -r], to: [length / 2, r], looks: 'right' },
      { mark: 'detail', letter: 'B', centre: [wide / 2, -r], radius: 2.2 },
      { mark: 'texture', at: [length / 4, r], out: [0, 1], ra: 0.8 },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'outside',
        worth: limits(outside, -0.025, -0.013, 'Ø'),
        axis: 'y',
        a: -r,
        b: r,
        fromA: length - lead,
        fromB: length - lead,
        side: 'right',
        hangs: [{ hang: 'datum', letter: 'A' }],
      },
      {
        callout: 'linear',
        of: 'collarDiameter',
        worth: plain(2 * collar, 'Ø'),
        axis: 'y',
        a: -collar,
        b: collar,
        fromA: -6,
        fromB: -6,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'collarThickness',
        worth: plain(6),
        axis: 'x',
        a: -6,
        b: 0,
        fromA: -collar,
        fromB: -collar,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'length',
        worth: plain(length),
        axis: 'x',
        a: 0,
        b: length,
        fromA: -collar,
        fromB: -r + drop,
        side: 'bottom',
        chain: 'collarThickness',
      },
      {
        callout: 'leader',
        of: 'lead',
        tips: [
          { at: [length - lead / 2, r - drop / 2], out: [1, 1] },
          { at: [length - lead / 2, -r + drop / 2], out: [1, -1] },
        ],
        lines: [[plain(lead), ' × ', degrees(15)]],
      },
    ],
  }
  const cut: View = {
    name: 'A-A',
    title: 'A – A',
    place: { is: 'section', from: 'left', aligned: true },
    metal: [
      { x1: -r, y1: -r, x2: floor, y2: r },
      { x1: floor, y1: h, x2: mouth, y2: r },
      { x1: floor, y1: -r, x2: mouth, y2: -h },
    ],
    marks: (() => {
      const shape: Outline = [
        { at: [mouth, h], bulge },
        { at: [-r, 0], bulge },
        { at: [mouth, -h] },
        { at: [floor, -h] },
        { at: [floor, h] },
      ]
      return [
        visible(shape),
        { mark: 'hatch', outlines: [shape] },
        { mark: 'centreMark', centre: [0, 0], radius: r },
      ] as Mark[]
    })(),
    callouts: [
      {
        callout: 'linear',
        of: 'slotWidth',
        worth: plusMinus(slotWidth, 0.025),
        axis: 'y',
        a: -h,
        b: h,
        fromA: mouth,
        fromB: mouth,
        side: 'right',
        hangs: [{ hang: 'frame', of: 'slotCentral', feature: 'symmetry', value: 0.05, datum: 'A' }],
      },
      {
        callout: 'linear',
        of: 'backWall',
        worth: plusMinus(backWall, 0.02),
        axis: 'x',
        a: -r,
        b: floor,
        fromA: 0,
        fromB: -h,
        side: 'bottom',
        hangs: [{ hang: 'frame', of: 'floorParallel', feature: 'parallelism', value: 0.02, datum: 'A', at: 'b' }],
      },
    ],
  }
  const detail: View = {
    name: 'B',
    title: 'B',
    place: { is: 'detail', least: deep, clip: { centre: [wide / 2, -r], radius: 2.2 } },
    metal: [
      { x1: -6, y1: -collar, x2: 0, y2: collar },
      { x1: 0, y1: -r + deep, x2: 4, y2: r },
    ],
    marks: [visible(body)],
    callouts: [
      {
        callout: 'linear',
        of: 'undercut.width',
        worth: plain(wide),
        axis: 'x',
        a: 0,
        b: wide,
        fromA: -r,
        fromB: -r,
        side: 'bottom',
      },
      {
        callout: 'linear',
        of: 'undercut.depth',
        worth: plain(deep),
        axis: 'y',
        a: -r,
        b: -r + deep,
        fromA: 1.4,
        fromB: wide - deep,
        side: 'right',
      },
    ],
  }
  return {
    part: 'guide-bushing',
    title: 'Guide bushing',
    number: '10',
    views: [front, cut, detail],
    notes: [
      ...order([
        'Turn the outside to size, the lead and the undercut B in one chucking. Measure the hub bore first.',
        'Part off, face the collar, chamfer.',
        'Mill the slot lying in a vee, full length, through the collar: go short, measure, finish.',
        'Measure the back wall at both ends over a pin or ball. Write it down: the shims are ground to it.',
      ]),
      {
        heading: 'WHY THE BACK WALL MATTERS',
        lines: [
          ['Back wall + shims + last tooth = floor to opposite wall.'],
          ['A wall that tapers cannot be put right in the shim.'],
        ],
      },
    ],
    asMade: {
      heading: 'AS MADE: measure and write down',
      rows: [
        { what: 'Outside Ø, both ends', limits: [limits(outside, -0.025, -0.013)] },
        { what: 'Slot width', limits: [plusMinus(slotWidth, 0.025)] },
        { what: 'Back wall, collar end', limits: [plusMinus(backWall, 0.02)] },
        { what: 'Back wall, far end', limits: [plusMinus(backWall, 0.02)] },
      ],
    },
    block: { ...words, stock: [plain(2 * collar + 2, 'Ø'), ' bar, ', plain(length + 10), ' long'] },
  }
}

/** Square blank, length, nose width and length, angles in degrees. */
export function groundBit(
  size: number,
  length: number,
  noseWidth: number,
  noseLength: number,
  rake: number,
  relief: number,
  taper: number,
): Drawing {
  const fall = noseLength * tangent(rake)
  const back = size * tangent(relief)
  const w = noseWidth / 2
  const neck = w - noseLength * tangent(taper)
  const foot = w - size * tangent(3)
  const front: View = {
    name: 'front',
    place: { is: 'front' },
    metal: [{ x1: 0, y1: 0, x2: length, y2: size }],
    marks: [
      visible(
        outline([0, size], [back, 0], [length, 0], [length, size], [noseLength, size], [noseLength, size - fall]),
      ),
      line('visible', [noseLength, 0], [noseLength, size - fall]),
      { mark: 'arrow', from: [-size / 2, size * 0.1], to: [-size / 2, size * 0.6], text: 'cut this way' },
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'length',
        worth: plain(length),
        axis: 'x',
        a: 0,
        b: length,
        fromA: size,
        fromB: size,
        side: 'top',
      },
      {
        callout: 'angle',
        of: 'rake',
        worth: degrees(rake, 'rake'),
        vertex: [0, size],
        a1: 180 - rake,
        a2: 180,
        starts: [
          [0, size],
          [0, size],
        ],
      },
      {
        callout: 'angle',
        of: 'endRelief',
        worth: degrees(relief, 'end relief'),
        vertex: [0, size],
        a1: 270,
        a2: 270 + relief,
        starts: [
          [0, size],
          [back, 0],
        ],
      },
    ],
  }
  const above: View = {
    name: 'from above',
    place: { is: 'seen', from: 'above' },
    metal: [
      { x1: 0, y1: -w, x2: noseLength, y2: w },
      { x1: noseLength, y1: -size / 2, x2: length, y2: size / 2 },
    ],
    marks: [
      visible(
        outline(
          [0, -w],
          [noseLength, -neck],
          [noseLength, -size / 2],
          [length, -size / 2],
          [length, size / 2],
          [noseLength, size / 2],
          [noseLength, neck],
          [0, w],
        ),
      ),
      line('centre', [0, 0], [length, 0]),
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'noseWidth',
        worth: plusMinus(noseWidth, 0.02),
        axis: 'y',
        a: -w,
        b: w,
        fromA: 0,
        fromB: 0,
        side: 'left',
      },
      {
        callout: 'linear',
        of: 'noseLength',
        worth: plusMinus(noseLength, 0.2),
        axis: 'x',
        a: 0,
        b: noseLength,
        fromA: -w,
        fromB: -size / 2,
        side: 'bottom',
      },
      {
        callout: 'leader',
        of: 'backTaper',
        tips: [
          { at: [noseLength / 2, (w + neck) / 2], out: [0, 1] },
          { at: [noseLength / 2, -(w + neck) / 2], out: [0, -1] },
        ],
        lines: [[degrees(taper, 'back taper, both sides')]],
      },
      {
        callout: 'leader',
        of: 'cornerRadius',
        tips: [
          { at: [0, w], out: [-1, 1] },
          { at: [0, -w], out: [-1, -1] },
        ],
        lines: [[plain(0.1, 'R'), ' both corners']],
      },
      {
        callout: 'leader',
        of: 'neckRadius',
        tips: [
          { at: [noseLength, -neck], out: [-0.6, -1] },
          { at: [noseLength, neck], out: [-0.6, 1] },
        ],
        lines: [[{ value: 0.5, saying: { say: 'max' }, prefix: 'R' }]],
      },
    ],
  }
  const nose: View = {
    name: 'from the nose',
    place: { is: 'seen', from: 'left' },
    metal: [{ x1: -size / 2, y1: 0, x2: size / 2, y2: size }],
    marks: [
      visible(outline([-size / 2, 0], [size / 2, 0], [size / 2, size], [-size / 2, size])),
      line('visible', [w, size], [foot, 0]),
      line('visible', [-w, size], [-foot, 0]),
      line('centre', [0, 0], [0, size]),
    ],
    callouts: [
      {
        callout: 'linear',
        of: 'size',
        worth: plain(size, '□'),
        axis: 'y',
        a: 0,
        b: size,
        fromA: -size / 2,
        fromB: -size / 2,
        side: 'left',
      },
      {
        callout: 'angle',
        of: 'sideRelief',
        worth: degrees(3, 'side relief, both'),
        vertex: [w, size],
        a1: 267,
        a2: 270,
        starts: [
          [foot, 0],
          [w, 0],
        ],
      },
    ],
  }
  return {
    part: 'tool-bit',
    title: 'Tool bit',
    number: '30',
    views: [front, above, nose],
    notes: [
      ...order([
        'Square the end. Mark the middle.',
        'Both sides alike: swing and tilt, neck back.',
        'End, then face last, down from the edge.',
        'Stone to sharp. Measure the width at the edge.',
      ]),
      {
        heading: 'CAUTION',
        caution: true,
        lines: [
          ['Eye protection and dust extraction. Guard on, rest close.'],
          ['Dip often. Never quench a hot blank: it cracks.'],
        ],
      },
    ],
    asMade: {
      heading: 'CHECK with calipers, write down',
      rows: [
        { what: 'Width at the edge', limits: [plusMinus(noseWidth, 0.02)] },
        { what: 'Neck width, on the face', limits: [plusMinus(2 * neck, 0.1)] },
      ],
    },
    block: {
      ...words,
      material: 'HSS square blank, hardened',
      stock: [plain(size, '□'), ' blank, ', plain(length + 1), ' long'],
      limits: 'ISO 2768 - m, angles ±0.5°',
    },
  }
}
