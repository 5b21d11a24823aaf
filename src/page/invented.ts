/** Jobs made up for show: no such pulley, gear or clutch exists. */
export const invented: Readonly<Record<string, string>> = {
  'cider-mill-pulley': `# Invented: no such pulley exists.
name: cider-mill-pulley
units: mm
bore:
  diameter: 24
  tolerance: H7
  length: 38
  mouth: 0.5
hub: { outside: 62, material: grey iron }
feature:
  keyway: { standard: iso-773, fit: normal }
load: { torque: "90 N m" }
use: drive pulley of a cider mill
tooling:
  bar:
    machine: lathe
    dial: { mark: 0.02, reads: travel }
    behind: 20
`,
  'winch-drum-gear': `# Invented: no such gear exists, and nobody measured this broach.
name: winch-drum-gear
units: in
bore:
  diameter: 7/8
  length: 1-3/8
hub: { outside: 2-1/2, material: mild steel }
feature:
  keyway: { standard: asme-b17.1, form: square }
use: drum gear of a boat winch for hauling out a dinghy
tooling:
  press:
    broach:
      toothWidth: .1885
      bodyWidth: .1880
      firstTooth: .375
      lastTooth: .440
      teeth: 21
      toothedLength: 5
      overall: 6.75
      pilot: .360
      pilotLength: .9
      gulletArea: .024 in2
      rootHeight: .25
      yield: 120000 psi
    force: 2 ton
  bar:
    machine: mill
    behind: 1
`,
  'chaff-cutter-clutch': `# Invented: no such clutch exists.
name: chaff-cutter-clutch
units: mm
bore: { diameter: 23, length: 32 }
hub: { outside: 55, material: mild steel }
feature:
  spline: { standard: iso-14, size: 6x23x26 }
tooling:
  bar: { behind: 40 }
`,
}
