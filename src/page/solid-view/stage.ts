/** The solids on their stage: laid side by side, turned, cut open. The only file that knows three. */
import {
  AlwaysStencilFunc,
  BackSide,
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  DecrementWrapStencilOp,
  DirectionalLight,
  FrontSide,
  Group,
  HemisphereLight,
  IncrementWrapStencilOp,
  LinearFilter,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  NotEqualStencilFunc,
  type Object3D,
  OrthographicCamera,
  Plane,
  PlaneGeometry,
  RepeatWrapping,
  ReplaceStencilOp,
  Scene,
  SRGBColorSpace,
  Vector3,
  WebGLRenderer,
} from 'three'
import type { Carved } from '../workers/makes.ts'
import { contourAt } from './facets.ts'

/** Colours as the page has them now. */
export interface Paints {
  readonly body: (part: string) => string
  readonly hatch: (part: string) => string
  readonly edge: string
}

interface Laid {
  readonly part: string
  readonly group: Group
  /** Longest along x; the middle of its box at the group's own origin. */
  readonly size: Vector3
  readonly skin: MeshLambertMaterial
  readonly lines: LineBasicMaterial
  readonly cap: Mesh<PlaneGeometry, MeshBasicMaterial>
  readonly stencils: readonly Mesh[]
  /** Of the face that lies open, and where it was last cut. */
  readonly contour: LineSegments<BufferGeometry, LineBasicMaterial>
  readonly opened: (z: number) => void
}

export interface Stage {
  /** Lays these in place of what lay there; how it was turned and cut stays. */
  readonly put: (solids: readonly Carved[]) => void
  /** Only this part; all of them without one. */
  readonly show: (part: string | undefined) => void
  /** Degrees. */
  readonly turn: (across: number, up: number) => void
  readonly near: (times: number) => void
  /** From 0, nothing cut off, to 1; undefined: whole. */
  readonly cut: (share: number | undefined) => void
  readonly paint: (paints: Paints) => void
  readonly fit: (width: number, height: number) => void
  readonly asAtFirst: () => void
  /** Gives back all that it holds of the graphics card. */
  readonly leave: () => void
}

/** Between parts that lie side by side, as a share of the longest. */
const gap = 0.06
const firstTurn = { across: -32, up: 24 }

/** A stripe for the cut faces, as they are hatched on paper. */
const hatching = (body: Color, stripe: Color): DataTexture => {
  const wide = 32
  const bytes = new Uint8Array(4 * wide * wide)
  for (let at = 0; at < wide * wide; at++) {
    const on = (at + Math.floor(at / wide)) % wide < 4
    const { r, g, b } = (on ? stripe : body).clone().convertLinearToSRGB()
    bytes.set([255 * r, 255 * g, 255 * b, 255].map(Math.round), 4 * at)
  }
  const texture = new DataTexture(bytes, wide, wide)
  texture.wrapS = RepeatWrapping
  texture.wrapT = RepeatWrapping
  texture.magFilter = LinearFilter
  texture.minFilter = LinearFilter
  texture.colorSpace = SRGBColorSpace
  texture.needsUpdate = true
  return texture
}

const geometryOf = ({ facets }: Carved): BufferGeometry =>
  new BufferGeometry()
    .setAttribute('position', new BufferAttribute(facets.positions, 3))
    .setAttribute('normal', new BufferAttribute(facets.normals, 3))

/** Counts the faces before and behind the plane, so that what lies open can be closed. */
const stencil = (geometry: BufferGeometry, side: typeof FrontSide | typeof BackSide, plane: Plane): Mesh => {
  const material = new MeshBasicMaterial({
    depthWrite: false,
    depthTest: false,
    colorWrite: false,
    stencilWrite: true,
    stencilFunc: AlwaysStencilFunc,
    side,
    clippingPlanes: [plane],
  })
  const way = side === BackSide ? IncrementWrapStencilOp : DecrementWrapStencilOp
  material.stencilFail = way
  material.stencilZFail = way
  material.stencilZPass = way
  return new Mesh(geometry, material)
}

/** Gives back what these hold of the graphics card. */
const giveBack = (of: Object3D): void =>
  of.traverse((each) => {
    if (!(each instanceof Mesh || each instanceof LineSegments)) return
    each.geometry.dispose()
    const material = each.material as Material & { map?: DataTexture | null }
    material.map?.dispose()
    material.dispose()
  })

/** How it is looked at, degrees; changed as it is turned. */
export interface Look {
  across: number
  up: number
  nearness: number
}
export const atFirst = (): Look => ({ ...firstTurn, nearness: 1 })

/** A stage on a canvas; undefined where this browser cannot draw solids. */
export const stageOn = (canvas: HTMLCanvasElement, look: Look): Stage | undefined => {
  const context = canvas.getContext('webgl2', { antialias: true, stencil: true, alpha: true })
  if (!context) return undefined
  const renderer = new WebGLRenderer({ canvas, context, antialias: true, stencil: true, alpha: true })
  renderer.debug.checkShaderErrors = false
  renderer.localClippingEnabled = true
  renderer.setClearAlpha(0)
  const scene = new Scene()
  const whole = new Group()
  const camera = new OrthographicCamera(-1, 1, 1, -1, 0.1, 10)
  const sun = new DirectionalLight(0xffffff, 1.9)
  sun.position.set(-0.5, 1, 1.4)
  scene.add(whole, new HemisphereLight(0xffffff, 0x8a8f8c, 1.7), sun)
  const plane = new Plane(new Vector3(0, 0, -1), 0)
  const laid: Laid[] = []
  /** What lay there before: given back once the next is drawn, or how it is drawn would be put together anew for that. */
  const left: Group[] = []
  let paints: Paints | undefined
  let alone: string | undefined
  let share: number | undefined
  let box = { width: 1, height: 1 }
  let asked = 0

  const shown = (): readonly Laid[] => laid.filter(({ part }) => alone === undefined || part === alone)

  /** In rows no wider than the longest, as they lie on a bench; whichever are shown. */
  const lay = (): { readonly wide: number; readonly high: number; readonly deep: number } => {
    const now = shown()
    const wide = Math.max(1, ...now.map(({ size }) => size.x))
    const deep = Math.max(1, ...now.map(({ size }) => size.z))
    const between = gap * wide
    const rows: { readonly parts: Laid[]; long: number; high: number }[] = []
    for (const each of now) {
      const last = rows.at(-1)
      if (last && last.long + between + each.size.x <= wide + 1e-6) {
        last.parts.push(each)
        last.long += between + each.size.x
        last.high = Math.max(last.high, each.size.y)
      } else rows.push({ parts: [each], long: each.size.x, high: each.size.y })
    }
    const high = rows.reduce((sum, row) => sum + row.high, between * (rows.length - 1))
    let y = high / 2
    for (const row of rows) {
      let x = -wide / 2
      for (const { group, size } of row.parts) {
        group.position.set(x + size.x / 2, y - row.high / 2, 0)
        x += size.x + between
      }
      y -= row.high + between
    }
    for (const each of laid) each.group.visible = now.includes(each)
    return { wide, high, deep }
  }

  const draw = (): void => {
    asked = 0
    const { wide, high, deep } = lay()
    const radius = Math.hypot(wide, high, deep) / 2
    // All of it, however it is turned: what it fills as it stands at first, and a little air.
    const [across, up] = [look.across, look.up].map((angle) => (angle * Math.PI) / 180) as [number, number]
    whole.rotation.set(up, across, 0, 'XYZ')
    whole.updateMatrixWorld(true)
    const ratio = box.width / box.height
    const [cos, sin] = [
      Math.cos(Math.abs((firstTurn.across * Math.PI) / 180)),
      Math.sin(Math.abs((firstTurn.across * Math.PI) / 180)),
    ]
    const lean = Math.sin((firstTurn.up * Math.PI) / 180)
    const needWide = wide * cos + deep * sin
    const needHigh = high * Math.cos((firstTurn.up * Math.PI) / 180) + (wide * sin + deep * cos) * lean
    const halfHigh = (1.08 * Math.max(needHigh, needWide / ratio)) / 2 / look.nearness
    camera.top = halfHigh
    camera.bottom = -halfHigh
    camera.left = -halfHigh * ratio
    camera.right = halfHigh * ratio
    camera.position.set(0, 0, 3 * radius)
    camera.near = 0.1 * radius
    camera.far = 6 * radius
    camera.updateProjectionMatrix()
    const cutAt = share === undefined ? deep : deep * (0.5 - share)
    plane.setComponents(0, 0, -1, cutAt).applyMatrix4(whole.matrixWorld)
    for (const { skin, lines, cap, stencils, contour, opened } of laid) {
      const cutting = share !== undefined
      skin.clippingPlanes = cutting ? [plane] : null
      lines.clippingPlanes = cutting ? [plane] : null
      cap.visible = cutting
      cap.position.setZ(cutAt)
      for (const each of stencils) each.visible = cutting
      contour.visible = cutting
      if (cutting) opened(cutAt)
    }
    renderer.render(scene, camera)
    for (const each of left.splice(0)) giveBack(each)
  }
  const soon = (): void => {
    if (asked === 0) asked = requestAnimationFrame(draw)
  }

  const dress = (each: Laid): void => {
    if (!paints) return
    const body = new Color(paints.body(each.part))
    each.skin.color.copy(body)
    each.lines.color.set(paints.edge)
    each.contour.material.color.set(paints.edge)
    each.cap.material.map?.dispose()
    const texture = hatching(body, new Color(paints.hatch(each.part)))
    const span = Math.max(each.size.x, each.size.y)
    // As wide a hatch on every part, whatever its size.
    texture.repeat.set(span / pitch(), span / pitch())
    each.cap.material.map = texture
    each.cap.material.needsUpdate = true
  }
  const pitch = (): number => Math.max(1, ...laid.map(({ size }) => size.x)) / 24

  const add = (solid: Carved): void => {
    const geometry = geometryOf(solid)
    geometry.computeBoundingBox()
    const size = geometry.boundingBox?.getSize(new Vector3()) ?? new Vector3(1, 1, 1)
    const middle = geometry.boundingBox?.getCenter(new Vector3()) ?? new Vector3()
    const skin = new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 })
    const lines = new LineBasicMaterial()
    const edges = new LineSegments(
      new BufferGeometry().setAttribute('position', new BufferAttribute(solid.facets.edges, 3)),
      lines,
    )
    const body = new Group()
    const stencils = [stencil(geometry, BackSide, plane), stencil(geometry, FrontSide, plane)]
    body.add(new Mesh(geometry, skin), edges, ...stencils)
    body.position.copy(middle.negate())
    // The longest along x, the shortest toward the eye.
    const upright = new Group()
    upright.add(body)
    if (size.z >= size.x && size.z >= size.y) {
      upright.rotation.set(0, Math.PI / 2, 0)
      size.set(size.z, size.y, size.x)
    } else if (size.y > size.x) {
      upright.rotation.set(0, 0, -Math.PI / 2)
      size.set(size.y, size.x, size.z)
    }
    const span = 1.02 * Math.max(size.x, size.y)
    const cap = new Mesh(
      new PlaneGeometry(span, span),
      new MeshBasicMaterial({
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
        stencilWrite: true,
        stencilRef: 0,
        stencilFunc: NotEqualStencilFunc,
        stencilFail: ReplaceStencilOp,
        stencilZFail: ReplaceStencilOp,
        stencilZPass: ReplaceStencilOp,
      }),
    )
    cap.onAfterRender = () => renderer.clearStencil()
    const order = 10 * laid.length
    for (const each of stencils) each.renderOrder = order + 1
    cap.renderOrder = order + 2
    const contour = new LineSegments(new BufferGeometry(), new LineBasicMaterial())
    contour.frustumCulled = false
    contour.renderOrder = order + 3
    upright.updateMatrix()
    body.updateMatrix()
    const placed = upright.matrix.clone().multiply(body.matrix).toArray()
    let openedAt: number | undefined
    const opened = (z: number): void => {
      if (z === openedAt) return
      openedAt = z
      contour.geometry.dispose()
      contour.geometry = new BufferGeometry().setAttribute(
        'position',
        new BufferAttribute(contourAt(solid.facets.positions, placed, z), 3),
      )
    }
    const group = new Group()
    group.add(upright, cap, contour)
    whole.add(group)
    laid.push({ part: solid.part, group, size, skin, lines, cap, stencils, contour, opened })
  }

  return {
    put: (solids) => {
      for (const { group } of laid.splice(0)) {
        group.removeFromParent()
        left.push(group)
      }
      for (const solid of solids) add(solid)
      for (const each of laid) dress(each)
      soon()
    },
    show: (part) => {
      alone = part
      soon()
    },
    turn: (across, up) => {
      look.across += across
      look.up = Math.max(-90, Math.min(90, look.up + up))
      soon()
    },
    near: (times) => {
      look.nearness = Math.max(0.5, Math.min(12, look.nearness * times))
      soon()
    },
    cut: (now) => {
      share = now
      soon()
    },
    paint: (now) => {
      paints = now
      for (const each of laid) dress(each)
      soon()
    },
    fit: (width, height) => {
      box = { width, height }
      renderer.setPixelRatio(Math.min(2, devicePixelRatio))
      renderer.setSize(width, height, false)
      // A canvas that has been resized is empty until it is drawn.
      cancelAnimationFrame(asked)
      draw()
    },
    asAtFirst: () => {
      Object.assign(look, atFirst())
      soon()
    },
    leave: () => {
      cancelAnimationFrame(asked)
      for (const each of [scene, ...left]) giveBack(each)
      renderer.dispose()
      renderer.forceContextLoss()
    },
  }
}
