/** The stopwatch on the practice field. */
export const stopwatch = {
  title: 'Stopwatch',
  label: (design: string) => `Stopwatch · ${design}`,
  back: 'To the design',
  what: 'What is timed',
  parts: { whole: 'Whole leg, driving included', retry: 'A repeated try', drive: 'The drive alone' },
  none: 'This design has no trip yet. Say in the design what the robot can do.',
  lost: 'What the address asks for is not in the design any more; choose what is timed.',
  help: 'Press as it begins and as it ends. ‘Next’ ends one time and begins the next at once, for trips that are repeated. The press counts when the finger comes down.',
  start: 'Start',
  stop: 'Stop',
  next: 'Next',
  undo: { start: 'Undo the start', stop: 'Undo the stop', next: 'Undo ‘next’' },
  running: 'Running',
  stopped: 'Stopped',
  time: (value: string) => `${value} s`,
  ended: (number: number, time: string) => `Time ${number}: ${time}`,
  hand: {
    title: 'A time from elsewhere',
    label: 'Time',
    help: 'From a video or another watch',
    add: 'Add it',
  },
  list: {
    title: 'Times taken',
    none: 'No time is taken yet.',
    head: ['No.', 'Time', 'Taken', 'Counts'],
    strike: 'Strike out',
    strikeOne: (number: number, time: string) => `Strike out time ${number}, ${time}`,
    back: 'Let it count again',
    backOne: (number: number, time: string) => `Let time ${number}, ${time}, count again`,
    reason: 'Why it does not count',
    reasons: ['The press came late', 'The robot was hindered', 'Something broke', 'It was another kind of trip'],
    other: 'another reason',
    own: 'The reason',
    noReason: 'Please say why, so that others can agree.',
    confirm: 'Strike it out',
    leave: 'Leave it',
    struck: (reason: string) => `Struck: ${reason}`,
    far: (of: { time: string; from: string; to: string }) =>
      `${of.time} lies far off: usual here is ${of.from} to ${of.to}. Was something else going on? It counts until you strike it.`,
    rule: 'Far off is what lies farther from the median than three times 1.4826 × the median distance from it, of which at least 0.1 s for the hand that presses.',
  },
  sum: {
    few: (count: number) =>
      count === 1 ? 'One time counts; at least 3 are needed.' : `${count} times count; at least 3 are needed.`,
    said: (of: { count: number; mean: string; low: string; high: string; struck: number }) =>
      `${of.count} times count: ${of.mean} on average, ${of.low} to ${of.high}.${of.struck > 0 ? ` ${of.struck} struck.` : ''}`,
  },
  kept: {
    all: 'All times are on the server.',
    some: (count: number) =>
      count === 1 ? 'One change is on this phone only.' : `${count} changes are on this phone only.`,
    sending: 'They are being sent …',
    silent:
      'The server does not answer. They stay on this phone, even if you close the page, and are sent when it is back.',
    refused: (why: string) => `The server refuses them: ${why} They stay on this phone.`,
    notKept:
      'This phone does not let the page keep anything: the times are only on this screen. Do not close it before they are sent.',
    try: 'Send now',
    nothing: 'Times are kept on this phone at once, and sent to the server by themselves.',
  },
  drive: {
    title: 'Measured and computed',
    from: 'The drive begins at',
    to: 'and ends at',
    computed: (of: { length: string; ideal: string; expected: string }) =>
      `Computed: ${of.length}, ${of.ideal} from rest to rest on the ideal line; with the design’s pace ${of.expected} on average.`,
    measured: (of: {
      count: number
      mean: string
      low: string
      high: string
      difference: string
      longer: boolean
      factor: string
    }) =>
      `${of.count} drives measured: ${of.mean} on average, ${of.low} to ${of.high}. That is ${of.difference} ${of.longer ? 'longer' : 'shorter'} than computed, and ${of.factor} times the ideal line.`,
    onePace:
      'These times change nothing by themselves. Where several drives show the same factor, enter it as the design’s pace. Where only this one differs, enter its mean divided by the pace under ‘Own times between two spots’ in the design.',
  },
  offline: {
    preparing: 'This page is being kept in this browser, so that it opens without a connection …',
    ready: 'This page opens without a connection, too: times are kept here and sent later.',
    onlyHttps:
      'At this address the page needs the server to open, because browsers keep pages of https addresses only. Once it is open, times are taken without a connection too.',
    never:
      'This browser does not keep the page: it needs the server to open. Once it is open, times are taken without a connection too.',
    asOf: (when: string) => `The server does not answer. The design is shown as this browser had it on ${when}.`,
  },
  use: {
    button: (count: number) => `Use these ${count} times in the design`,
    before: (time: string) => `The design says ${time} on average now.`,
    same: 'The design uses these times.',
    done: (revision: number) => `Saved in the design as revision ${revision}.`,
    note: (what: string, count: number, struck: number) =>
      `Timed on the practice field: ${what}, ${count} times${struck > 0 ? `, ${struck} struck` : ''}`,
    gone: 'This part is not in the newest design any more, so nothing is changed.',
    busy: 'Somebody keeps saving the design; please try again.',
    draft:
      'There are unsaved edits of this design in this browser. Take the times over in the design, where they are open, or save them first.',
    answer: (of: { before: string; after: string; change: string; way: string }) =>
      `With these times: ${of.before} → ${of.after} expected points a match (${of.change}), played as ‘${of.way}’.`,
  },
  fromDesign: {
    link: 'Time it with the stopwatch',
    have: (of: { count: number; mean: string; struck: number }) =>
      `${of.count} times are taken, ${of.mean} on average${of.struck > 0 ? `; ${of.struck} struck` : ''}.`,
    use: 'Use them',
    used: 'They are in use.',
    few: (count: number) =>
      count === 1 ? 'One time is taken; 3 are needed.' : `${count} times are taken; 3 are needed.`,
  },
  caution: {
    title: 'A moving robot',
    text: 'A robot at speed does not see you: it runs over feet, throws people down and pins them to walls. Usually whoever times stands outside of the field’s border, nobody is on it while the robot is enabled, one person holds the stop and watches nothing else, and hands go in only after it is disabled.',
  },
}
