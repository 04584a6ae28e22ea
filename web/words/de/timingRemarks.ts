import type { Words } from '../catalogue.ts'

export const timingRemarks: Words['timingRemarks'] = {
  notFollowed: 'Diese Bewegung ändert sich zu schnell, um ihr zu folgen.',
  noMechanism: 'Diesen Mechanismus hat der Roboter nicht.',
  noDriveNumbers: 'Mit dieser Übersetzung passen keine Zahlen des Antriebs zu den Strecken.',
  tooSlow: 'Es würde {seconds} dauern; kein Schritt darf länger als {longest} dauern.',
  someTripsImpossible: 'In {share} der Wege, die die Streuungen zulassen, geht es nicht; die Zeit ist die der anderen.',
  perhapsImpossible:
    'Mit einer Wahrscheinlichkeit von {share} geht es gar nicht, nach dem, was von den Zahlen bekannt ist.',
  sourceVoltageLow: 'Die Batterie fällt auf {voltage}, unter die {lowest}, bei denen die Regler drosseln.',
  nearStall: 'Jeder Motor zieht am Anfang {current}, etwa seinen Blockierstrom, und keine Grenze ist gesetzt.',
  currentLimited: 'Die Stromgrenze von {limit} je Motor hält das Drehmoment zurück.',
  motorDoubtful:
    'Die Zahlen des Motors passen nicht zusammen: {share} mehr Drehmoment, als Strom und Leerlaufdrehzahl zulassen.',
  tooWeakToMove: 'Die Motoren schieben mit höchstens {force}; das überwindet den Widerstand von {resistance} nicht.',
  wheelsOnlySpin: 'Die Reifen halten höchstens {force}; das überwindet den Widerstand von {resistance} nicht.',
  wheelsSlip: 'Mit voller Kraft würden die Räder bis {speed} durchdrehen.',
  topSpeedUnused: 'Er kommt auf {peak} von {top}: Auf dieser Strecke kann eine größere Untersetzung schneller sein.',
  pieceSlips: 'Das Stück rutscht: Die Rollen greifen es mit {grip}, und {drag} halten es zurück.',
  rollersStall:
    'Die Rollen bleiben stehen: Die Motoren schieben mit höchstens {force}, und {drag} halten das Stück zurück.',
  slowerThanDrive: 'Die Rollen sind nicht schneller, als der Roboter fährt ({ratio} Mal): Das Stück wird weggeschoben.',
  hardlyQuickerThanDrive:
    'Die Rollen sind nur {ratio} Mal so schnell, wie der Roboter fährt; üblich ist etwa das Doppelte.',
  noTurn: 'Anfang und Ende sind derselbe Winkel von {from}.',
  startsBeyondStop: 'Er würde bei {from} beginnen, außerhalb der Anschläge bei {low} und {high}.',
  stopInTheWay: 'Ein Anschlag steht im Weg: {to} liegt außerhalb von {low} bis {high}.',
  hitsStop: 'Er läuft mit {energy} gegen den Anschlag.',
  runsPast: 'Er kommt mit {energy} an und braucht dort einen Anschlag.',
  tooWeakToLift: 'Er läuft nicht an: Die Motoren drehen mit höchstens {torque}, Gewicht und Reibung mit {needed}.',
  tooWeakToStop: 'Er lässt sich nicht anhalten: Das Gewicht zieht mit bis zu {gravity}, und die Bremse hält {torque}.',
  stalls: 'Er bleibt bei {angle} stehen: Gewicht und Reibung brauchen dort {needed}, die Motoren geben {torque}.',
  tooWeakToTurnAt: 'Bei {angle} drehen die Zylinder mit {torque}; Gewicht und Reibung brauchen {needed}.',
  cylinderDoesNotFit:
    'Der Zylinder passt nicht: Bei {angle} sind seine Gelenke {length} voneinander entfernt, und er hat {low} bis {high}.',
  deadCentre: 'Bei {angle} zeigt der Zylinder auf den Drehpunkt oder zieht anders herum und kann den Arm nicht drehen.',
  neverArrives: 'Es bleibt, wo es ist: In der längsten Zeit, die ein Schritt dauern darf, kommt es nicht an.',
  noPressure: 'Die Luft hat {pressure}, nicht mehr als der Raum mit {ambient}: Nichts schiebt.',
  tooWeakToPush: 'Die Zylinder schieben nach der Reibung mit {force}; das überwindet die Last von {load} nicht.',
  arrivesHard: 'Er kommt mit {speed} und {energy} an: Ohne Dämpfung ist das hart für Zylinder und Anschlag.',
  waitsForPressure: 'Er wartet {share} der Zeit auf Druck, bevor er sich bewegt.',
  stopUnused: 'Der Anschlag liegt hinter dem Hub von {travel}.',
  tooWeakToTurn: 'Die Motoren drehen mit höchstens {torque}; das überwindet das Bremsmoment von {drag} nicht.',
  neverReachesSpeed: 'Das Rad erreicht {target} nie: Mit dieser Untersetzung kommt es auf {top}.',
  shotEmptiesWheel:
    'Ein Wurf nimmt {needed}, und das Rad hat bei seiner Drehzahl {energy}: Es braucht mehr Trägheit oder mehr Drehzahl.',
  losesMuchSpeed: 'Ein Wurf nimmt {share} der Drehzahl: Der nächste ist nicht wie er, bis das Rad sich erholt hat.',
  nearFreeSpeed:
    'Das Ziel ist {share} der höchsten Drehzahl: Der letzte Teil dauert lang, und mit schwacher Batterie wird es vielleicht nicht erreicht.',
  tooMuchDrag:
    'Keine denkbare Abwurfgeschwindigkeit erreicht die Öffnung in {distance} Entfernung gegen den Luftwiderstand.',
  aimsTooLow:
    'Bei {angle} fliegt es unter der Öffnung durch, wie schnell auch immer: Die gerade Linie dorthin steigt um {needed}.',
  neverArrivesFlight: 'Mit {speed} ist das Stück nicht binnen einer Minute an der Öffnung.',
  doesNotFit: 'Das Stück von {piece} ist nicht kleiner als die Öffnung von {size}.',
  errorFallsShort: 'Beim schlimmsten der Fehler kommt es gar nicht an die Öffnung.',
  hitsRim: 'Beim schlimmsten der Fehler trifft es den Rand: Es fehlen {lack}.',
  fromBelow: 'Es kommt von unten an die liegende Öffnung, noch im Steigen.',
  misses: 'Mit dieser Abwurfgeschwindigkeit fliegt es {miss} neben der Mitte vorbei.',
  tankOverPressure: 'Der Behälter darf {most} halten und würde auf {stored} gefüllt: Er kann platzen.',
  noPressureWorking: 'Der Arbeitsdruck von {working} ist nicht höher als der des Raums von {ambient}: Nichts schiebt.',
  storedTooLow: 'Der Vorrat beginnt mit {stored}, weniger als die {working}, mit denen gearbeitet wird.',
  notOneCycle:
    'Der Vorrat reicht nicht für einen Zyklus: Danach sind {after} übrig von den {working}, die gebraucht werden.',
  airRunsOut: 'Die Luft geht im Zyklus {cycle} aus, {seconds} nach Beginn des Matches.',
  airRunsOutCold:
    'Wenn der Behälter kalt bleibt, geht die Luft im Zyklus {cycle} aus, {seconds} nach Beginn des Matches.',
  compressorTooWeak:
    'Der Kompressor bringt nie zurück, was ein Zyklus nimmt: Er endet oder gibt unter diesem Druck nichts mehr, Verluste abgezogen.',
  compressorStartsLate: 'Der Kompressor beginnt erst bei {on}, unter dem Arbeitsdruck von {working}.',
  compressorNeverEnds: 'Der Kompressor soll bei {off} enden und kommt auf {most}: Er endet nie.',
  compressorOverPressure: 'Der Kompressor soll bei {off} enden, und der Behälter darf {most} halten: Er kann platzen.',
}
