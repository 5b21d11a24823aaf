/** A push broach for keyways 8 wide, invented: as somebody would measure it, mm. */
export const eightBroach = {
  toothWidth: 8.018,
  bodyWidth: 7.98,
  firstTooth: 12.5,
  lastTooth: 14.4,
  pilot: 12,
  toothedLength: 150,
  teeth: 26,
  overall: 210,
  pilotLength: 28,
}
