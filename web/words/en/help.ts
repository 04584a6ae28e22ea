/** The page that helps to begin, and the explanations of words on the other screens. */
export const help = {
  title: 'Help',
  begin: 'How to start',
  paths: [
    {
      title: 'See what comes out',
      steps: [
        'The start page shows the open question of the newest decision with its answer. Every number with dots under it opens: how it came about.',
        'From there, the trade-off shows what would change the answer, and the decision record can be printed.',
      ],
      href: '/',
      link: 'To the start page',
    },
    {
      title: 'Rank ways to play in ten minutes',
      steps: [
        'Begin a quick sheet on your game, or on the one that is there.',
        'Add a way to play: where it collects, where it scores, and how many seconds you think each trip takes. Five ways make a ranking.',
        'Where nobody agrees on a number, open a round: everybody guesses on their own phone.',
      ],
      href: '/quick-sheet',
      link: 'To the quick sheets',
    },
    {
      title: 'Decide for your own game',
      steps: [
        'Games: begin with an empty field or copy one. Enter the clock, the places and what they pay; move their spots on the field.',
        'Designs: sketch a robot for your game, and a second one that leaves something out. Give each a way to play.',
        'Trade-offs: compare their ways to play, and name the numbers that you do not know.',
        'Decisions: keep the answer from its trade-off, and print it.',
      ],
      href: '/games',
      link: 'To the games',
    },
    {
      title: 'At an event',
      steps: [
        'Event: make it with its teams and schedule, or bring it in from a file. Say who watches whom; everybody counts on their own phone.',
        'What the field says: all teams side by side as far as they were seen, and how the coming matches would end. Doubts lists the records that do not fit.',
        'Model against field: a robot’s timed trips beside what its design says of them. Check your decisions by it.',
      ],
      href: '/event',
      link: 'To the events',
    },
  ],
  words: 'What the words mean',
  find: 'Find a word',
  noWord: (typed: string) => `No word here has ‘${typed}’ in it.`,
  shortcuts: 'Keyboard shortcuts',
  shortcutsHow: 'Press ? on any screen to see this list, except while you type.',
  numbers: 'What the numbers are',
  numbersText: [
    'Points are expected points of one robot alone in one match: no traffic, no queues, no opponents. A point of difference between two sketches is less than what anyone knows about them.',
    'On the Match screen they are points of three robots against three, with queues, full goals, defence and luck; ± is one standard error there.',
    'Seconds are shown to 0.1, points to 0.1, chances to 1 %. What is not known as well as that shows how well it is known.',
    'A field for a length, a mass or a speed reads 36 in, 3 ft 2 in, 0.9 m or 12 lb, whichever units are shown.',
    'On the pages of an event the numbers come from what was recorded; each says where it lies with 80 % and with 95 %.',
  ],
  /** Before the words of a screen that can be opened. */
  onThisScreen: 'Words:',
  all: 'All words',
}
