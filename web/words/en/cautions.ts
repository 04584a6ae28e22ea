/** How people get hurt and what is usually done, for the screens and pages that help to build or run such a thing. */
export const cautions = {
  label: 'Cautions',
  /** Stands once under all cautions of a page. */
  whoDecides: 'The event’s rules, local codes and the people responsible for safety decide, not this page.',
  lifted: {
    title: 'Lifted robots',
    text: 'A robot that hangs can drop when a latch, a rope or its power lets go, and crush hands or feet under it. Usually two people lower it, a support stands under it before anyone reaches in, and nobody stands below.',
  },
  spinning: {
    title: 'Spinning wheels',
    text: 'A wheel at speed throws pieces and fragments and pulls in fingers, hair and sleeves, and runs on after the power is off. Usually it is guarded, eyes are protected, and hands stay out until it stands still.',
  },
  air: {
    title: 'Stored air',
    text: 'Cylinders move with full force when air is let in or a valve is knocked, even with the power off, and a damaged tank can burst. Usually the air is vented and locked out before anyone works on the robot, and eyes are protected.',
  },
  energy: {
    title: 'Springs and batteries',
    text: 'A loaded spring or raised arm strikes when it is released, and a shorted or damaged battery burns. Usually springs are unloaded and the battery unplugged before work, and a damaged battery is set apart.',
  },
}
