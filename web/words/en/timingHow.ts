/** What each of a mechanism's numbers to check is, and the names of the parts that make it. */
export const timingHow = {
  gravity: 'Free fall',
  half: 'Two',
  diameter: 'Two, for half of the diameter',
  steepest: 'Greatest cosine of its angle on the way',
  shotEnergy: 'Energy that a shot takes',
  energyLeft: 'Energy that is left',
  rise: 'Rise in the air, read off the flight',
  overPressure: 'Pressure above that of the room',
  area: 'Area that it pushes on, of one cylinder',
  sourceDrop: 'Highest current of the battery × its resistance',
  /** By its name, with its calculator before it where the name means several things. */
  of: {
    motorCurrent:
      'The current of one motor, by the straight line of torque over current, where its torque is greatest on the way.',
    sourceCurrent:
      'What all motors draw together where that is most: at the start, or where the limit ends that held them. Below full voltage a controller trades volts for amperes, so that the power is what counts.',
    sourceVoltage: 'What the battery has without a load, less what its highest current loses in battery and wiring.',
    topSpeed: 'Where the motors’ push only just overcomes the rolling resistance: from there it gets no quicker.',
    'drive.peakSpeed': 'Read off the course of the drive: the speed at which it begins to brake, or has at the end.',
    acceleration:
      'The least of what tyres, current limit and motors allow at the start, less the rolling resistance, over the mass with what the rotors add to it.',
    limitedBy: 'Which of the three is the least at the start: tyres, current limit or motors.',
    'drive.kneeSpeed':
      'Where the motors’ straight line of push over speed comes down to what tyres or current limit held.',
    deceleration: 'What the tyres hold over the mass, or the braking limit, whichever is less.',
    tractionForce: 'The weight on driven wheels times the friction of the tyres.',
    launchForce: 'What the motors push with at a standstill, or what the current limit allows, whichever is less.',
    runningSeconds: 'The time of the whole drive less that of braking.',
    brakingSeconds: 'The time of the whole drive less that until it brakes.',
    'rollers.surfaceSpeed':
      'The motors’ speed without a load, at the battery’s voltage, over the reduction, at the rollers’ edge.',
    ratio: 'Surface speed without a load over the robot’s speed while it collects.',
    pieceSpeed: 'Read off the course of the piece, at the end of its travel.',
    stallForce: 'The motors’ torque at a standstill, or what the current limit allows, over the rollers’ radius.',
    slidingDistance:
      'How far the piece comes while the rollers slip on it: until the motors push with less than they grip with.',
    gravityTorque: 'Weight times its distance from the pivot, at the most level angle on the way.',
    'pivot.startTorque':
      'With motors: their torque at a standstill, or what the current limit allows. With cylinders: full pressure times the lever arm at the start. Friction and gravity are not taken off.',
    'pivot.peakSpeed': 'Read off the course of the arm: the greatest on the way.',
    'pivot.endSpeed': 'Read off the course of the arm where it arrives.',
    'pivot.endEnergy':
      'Half of the moment of inertia, with what the rotors add to it, times the square of the speed on arrival.',
    brakingFrom: 'Where braking has to begin so that the arm comes to rest at its end: followed back from there.',
    holdingCurrent:
      'Gravity’s torque at the end angle less the friction, by the straight line of torque over current, for one motor.',
    strokeUsed:
      'The cylinder’s length from hinge to hinge at the end angle less that at the start, by the triangle of its hinges.',
    'pivot.freeAir':
      'The volume behind the pistons at the end, filled to the working pressure, at the room’s pressure; for all cylinders.',
    spinUpSeconds:
      'The straight stretch up to the speed at which the current limit lets go, then the exponential up to the target.',
    recoverySeconds: 'As spinning up, from the speed right after a shot.',
    'wheel.surfaceSpeed': 'The target speed times half of the diameter.',
    energy: 'Half of the moment of inertia, with what the rotors add to it, times the square of the target speed.',
    speedAfterShot: 'The energy at the target speed less what a shot takes is that of the speed that is left.',
    speedLost: 'The target speed less that right after a shot, as a share of the target speed.',
    freeSpeed: 'Where the motors’ torque only just overcomes the drag.',
    'wheel.kneeSpeed':
      'Where the motors’ straight line of torque over speed comes down to what the current limit held.',
    timeConstant: 'The moment of inertia over how much torque each step of speed takes away.',
    exitSpeed: 'As typed; or sought, until the flight with drag passes the middle of the opening.',
    vacuumSpeed: 'The parabola from release to the middle of the opening at that angle, solved for its speed.',
    leastSpeed:
      'Without drag, the least speed with which any parabola comes to the middle: √(g · (rise + straight distance)).',
    leastAngle: 'Half-way between straight up and the straight line to the middle.',
    wheelSpeed: 'The wheel’s surface speed over half of its diameter.',
    wheelSurfaceSpeed: 'The exit speed over the share of the surface speed that the piece leaves with.',
    apex: 'Release height and the greatest rise of the flight with drag.',
    arrivalSpeed: 'Read off the flight where it passes the opening.',
    arrivalAngle: 'Read off the flight where it passes the opening.',
    miss: 'Read off the flight: how far from the middle it passes the opening.',
    margin: 'The flight with the worst of the errors of speed and angle: what is then left between piece and rim.',
    'cylinder.force':
      'Pressure above that of the room, times the area it pushes on, of all cylinders; friction is not taken off.',
    travel: 'The full stroke, or where the hard stop ends it, whichever is less.',
    startsAt: 'When the pressures’ difference first overcomes load and friction, by the flows while the piston stands.',
    'cylinder.peakSpeed': 'Read off the course of the piston: the greatest on the way.',
    'cylinder.endSpeed': 'Read off the course of the piston where it arrives.',
    'cylinder.endEnergy': 'Half of the mass times the square of the speed on arrival.',
    flowSpeed: 'What the valve lets out at the speed of sound, over the area of the piston that pushes it out.',
    supplyChoked:
      'Whether the pressure behind the valve is at or below its critical ratio of that before it, at mid-travel.',
    exhaustChoked:
      'Whether the room’s pressure is at or below the critical ratio of that in the chamber, at mid-travel.',
    'cylinder.freeAir':
      'The volume of one stroke and the dead volume, filled from the room’s to the working pressure, at the room’s pressure; for all cylinders.',
  },
}
