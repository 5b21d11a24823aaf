/** What can hurt, in a heavy box on the sheet of the tool that does it. */
import type { Design } from '../src/design.ts'
import type { Notes } from '../src/drawing/view.ts'

/** For whatever goes under the press with a push broach. */
export const pressing: Notes = {
  heading: 'CAUTION',
  caution: true,
  lines: [
    [
      'Push broaches are hard and shatter sideways: guard, face shield, stand out of its line, ram square, never strike it, ' +
        'never pull it back. Stop if the force jumps.',
    ],
  ],
}

/** For whatever is hardened and ground by hand. */
export const grinding: Notes = {
  heading: 'CAUTION',
  caution: true,
  lines: [
    [
      'Eye protection, dust extraction, guard on, rest close. Stand aside as the wheel runs up. Harden with tongs, away from ' +
        'oil that can catch fire. Hard steel snaps: never bend it straight.',
    ],
  ],
}

/** For a bar that is moved by hand through a hub that must stand still. */
export const stroking = ({ spec }: Design): Notes => ({
  heading: 'CAUTION',
  caution: true,
  lines: [
    [
      `Power off at the isolator, ${spec.tooling.bar?.machine === 'mill' ? '' : 'chuck key out, '}spindle locked: ` +
        "never start it with the bar in the hub. Knuckles off the hub's edge. Burrs in the hole cut.",
    ],
  ],
})
