import type { timingHow as english } from '../en/timingHow.ts'

export const timingHow: typeof english = {
  gravity: 'Fallbeschleunigung',
  half: 'Zwei',
  diameter: 'Zwei, für den halben Durchmesser',
  steepest: 'Größter Kosinus seines Winkels auf dem Weg',
  shotEnergy: 'Energie, die ein Schuss nimmt',
  energyLeft: 'Energie, die bleibt',
  rise: 'Anstieg im Flug, daraus abgelesen',
  overPressure: 'Druck über dem des Raums',
  area: 'Fläche, auf die er drückt, eines Zylinders',
  sourceDrop: 'Höchster Strom des Akkus × sein Widerstand',
  of: {
    motorCurrent:
      'Der Strom eines Motors, nach der Geraden von Drehmoment über Strom, wo sein Drehmoment auf dem Weg am größten ist.',
    sourceCurrent:
      'Was alle Motoren zusammen ziehen, wo es am meisten ist: am Anfang, oder wo die Grenze endet, die sie hielt. Unter voller Spannung tauscht ein Regler Volt gegen Ampere, sodass es auf die Leistung ankommt.',
    sourceVoltage: 'Was der Akku ohne Last hat, weniger dem, was sein höchster Strom in Akku und Leitung verliert.',
    topSpeed: 'Wo der Schub der Motoren den Rollwiderstand gerade noch überwindet: Schneller wird er von da an nicht.',
    'drive.peakSpeed':
      'Am Verlauf der Fahrt abgelesen: das Tempo, bei dem er zu bremsen beginnt oder das er am Ende hat.',
    acceleration:
      'Das Kleinste von dem, was Reifen, Stromgrenze und Motoren am Anfang hergeben, weniger dem Rollwiderstand, geteilt durch die Masse samt dem, was die Läufer dazutun.',
    limitedBy: 'Welches der drei am Anfang das kleinste ist: Reifen, Stromgrenze oder Motoren.',
    'drive.kneeSpeed':
      'Wo die Gerade der Motoren von Schub über Tempo auf das herunterkommt, was Reifen oder Stromgrenze hielten.',
    deceleration: 'Was die Reifen halten, geteilt durch die Masse, oder die Bremsgrenze, je nachdem, was kleiner ist.',
    tractionForce: 'Das Gewicht auf angetriebenen Rädern mal die Reibung der Reifen.',
    launchForce: 'Womit die Motoren im Stand schieben oder was die Stromgrenze erlaubt, je nachdem, was kleiner ist.',
    runningSeconds: 'Die Zeit der ganzen Fahrt weniger der des Bremsens.',
    brakingSeconds: 'Die Zeit der ganzen Fahrt weniger der bis zum Bremsen.',
    'rollers.surfaceSpeed':
      'Das Tempo der Motoren ohne Last bei der Spannung des Akkus, geteilt durch die Untersetzung, am Rand der Rollen.',
    ratio: 'Oberflächentempo ohne Last, geteilt durch das Tempo des Roboters beim Holen.',
    pieceSpeed: 'Am Verlauf des Stücks abgelesen, am Ende seines Wegs.',
    stallForce:
      'Das Drehmoment der Motoren im Stand oder was die Stromgrenze erlaubt, geteilt durch den Halbmesser der Rollen.',
    slidingDistance:
      'Wie weit das Stück kommt, während die Rollen darauf rutschen: bis die Motoren weniger schieben, als sie greifen.',
    gravityTorque: 'Das Gewicht mal sein Abstand vom Drehpunkt, beim waagrechtesten Winkel auf dem Weg.',
    'pivot.startTorque':
      'Mit Motoren: ihr Drehmoment im Stand oder was die Stromgrenze erlaubt. Mit Zylindern: voller Druck mal der Hebelarm am Anfang. Reibung und Gewicht sind nicht abgezogen.',
    'pivot.peakSpeed': 'Am Verlauf des Arms abgelesen: das größte auf dem Weg.',
    'pivot.endSpeed': 'Am Verlauf des Arms abgelesen, wo er ankommt.',
    'pivot.endEnergy':
      'Das halbe Trägheitsmoment samt dem, was die Läufer dazutun, mal das Quadrat des Tempos bei der Ankunft.',
    brakingFrom: 'Wo das Bremsen beginnen muss, damit der Arm an seinem Ende zur Ruhe kommt: von dort zurückverfolgt.',
    holdingCurrent:
      'Das Drehmoment des Gewichts beim Endwinkel weniger der Reibung, nach der Geraden von Drehmoment über Strom, für einen Motor.',
    strokeUsed:
      'Die Länge des Zylinders von Gelenk zu Gelenk beim Endwinkel weniger der am Anfang, nach dem Dreieck seiner Gelenke.',
    'pivot.freeAir':
      'Das Volumen hinter den Kolben am Ende, auf den Arbeitsdruck gefüllt, beim Druck des Raums; für alle Zylinder.',
    spinUpSeconds:
      'Das gerade Stück bis zu dem Tempo, bei dem die Stromgrenze loslässt, dann die Exponentialkurve bis zum Ziel.',
    recoverySeconds: 'Wie das Hochlaufen, vom Tempo gleich nach einem Schuss an.',
    'wheel.surfaceSpeed': 'Das Zieltempo mal der halbe Durchmesser.',
    energy: 'Das halbe Trägheitsmoment samt dem, was die Läufer dazutun, mal das Quadrat des Zieltempos.',
    speedAfterShot: 'Die Energie beim Zieltempo weniger der, die ein Schuss nimmt, ist die des Tempos, das bleibt.',
    speedLost: 'Das Zieltempo weniger dem gleich nach einem Schuss, als Anteil des Zieltempos.',
    freeSpeed: 'Wo das Drehmoment der Motoren das Bremsmoment gerade noch überwindet.',
    'wheel.kneeSpeed':
      'Wo die Gerade der Motoren von Drehmoment über Tempo auf das herunterkommt, was die Stromgrenze hielt.',
    timeConstant: 'Das Trägheitsmoment, geteilt durch das Drehmoment, das jede Stufe des Tempos wegnimmt.',
    exitSpeed: 'Wie getippt; oder gesucht, bis der Flug mit Luftwiderstand durch die Mitte der Öffnung geht.',
    vacuumSpeed: 'Die Parabel vom Abwurf zur Mitte der Öffnung bei diesem Winkel, nach ihrem Tempo gelöst.',
    leastSpeed:
      'Ohne Luftwiderstand das kleinste Tempo, mit dem irgendeine Parabel zur Mitte kommt: √(g · (Anstieg + gerade Entfernung)).',
    leastAngle: 'Die Mitte zwischen senkrecht nach oben und der geraden Linie zur Mitte der Öffnung.',
    wheelSpeed: 'Das Oberflächentempo des Rads, geteilt durch seinen halben Durchmesser.',
    wheelSurfaceSpeed:
      'Das Austrittstempo, geteilt durch den Anteil des Oberflächentempos, mit dem das Stück austritt.',
    apex: 'Abwurfhöhe und größter Anstieg des Flugs mit Luftwiderstand.',
    arrivalSpeed: 'Am Flug abgelesen, wo er die Öffnung durchquert.',
    arrivalAngle: 'Am Flug abgelesen, wo er die Öffnung durchquert.',
    miss: 'Am Flug abgelesen: wie weit von der Mitte er die Öffnung durchquert.',
    margin: 'Der Flug mit dem schlimmsten der Fehler von Tempo und Winkel: was dann zwischen Stück und Rand bleibt.',
    'cylinder.force':
      'Druck über dem des Raums mal die Fläche, auf die er drückt, aller Zylinder; die Reibung ist nicht abgezogen.',
    travel: 'Der ganze Hub, oder wo der Anschlag ihn beendet, je nachdem, was kleiner ist.',
    startsAt:
      'Wann der Unterschied der Drücke zuerst Last und Reibung überwindet, nach den Strömen, solange der Kolben steht.',
    'cylinder.peakSpeed': 'Am Verlauf des Kolbens abgelesen: das größte auf dem Weg.',
    'cylinder.endSpeed': 'Am Verlauf des Kolbens abgelesen, wo er ankommt.',
    'cylinder.endEnergy': 'Die halbe Masse mal das Quadrat des Tempos bei der Ankunft.',
    flowSpeed:
      'Was das Ventil mit Schallgeschwindigkeit hinauslässt, geteilt durch die Kolbenfläche, die es hinausdrückt.',
    supplyChoked:
      'Ob der Druck hinter dem Ventil auf halbem Weg beim kritischen Verhältnis zu dem davor oder darunter liegt.',
    exhaustChoked:
      'Ob der Druck des Raums auf halbem Weg beim kritischen Verhältnis zu dem in der Kammer oder darunter liegt.',
    'cylinder.freeAir':
      'Das Volumen eines Hubs und das tote Volumen, vom Druck des Raums auf den Arbeitsdruck gefüllt, beim Druck des Raums; für alle Zylinder.',
  },
}
