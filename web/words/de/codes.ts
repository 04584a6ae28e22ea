import type { Words } from '../catalogue.ts'

export const codes: Words['codes'] = {
  stands: 'Ein Code enthält alles: Er bleibt stehen, bis er gelesen ist.',
  runs: (needed) => `Eine laufende Folge; ${needed} verschiedene Codes genügen, gleich welche.`,
  slower: 'Langsamer (zwei je Sekunde)',
  reader: 'Kamera für Codes',
  opening: 'Die Kamera wird geöffnet …',
  hold: 'Den Code so ins Bild halten, dass er den größten Teil des Quadrats füllt.',
  picture: 'Das Bild der Kamera',
  nothingYet: 'Noch kein Code gesehen.',
  partly: (have, needed) => `${have} von ${needed} Codes sind da; weiter hinhalten.`,
  whole: 'Ganz gelesen.',
  lamp: 'Lampe',
  sound: 'Ton, wenn gelesen',
  closeCamera: 'Kamera schließen',
  again: 'Noch einmal versuchen',
  trouble: {
    insecure:
      'Dieser Browser gibt die Kamera nur über https frei oder auf dem Rechner des Servers selbst. Nimm stattdessen das Netz oder eine Datei.',
    refused:
      'Die Kamera wurde nicht erlaubt. Erlaube sie für diese Adresse in den Einstellungen des Browsers und versuche es noch einmal.',
    none: 'Es wurde keine Kamera gefunden. Schließe eine an und versuche es noch einmal, oder nimm einen anderen Weg.',
    busy: 'Ein anderes Programm hält die Kamera fest. Schließe es und versuche es noch einmal.',
  },
  problem: {
    foreign: 'Das ist ein anderer Code, keiner von diesem Programm.',
    newer: 'Dieser Code stammt von einer neueren Version. Lade diese Seite neu und zeige ihn noch einmal.',
    damaged: 'Der Code konnte nicht ganz gelesen werden. Zeige ihn noch einmal.',
    otherGame: 'Diese Aufzeichnungen entstanden mit einem Stand des Spiels, der hier nicht bekannt ist.',
  },
  file: {
    foreign: 'Diese Datei enthält keine Aufzeichnungen dieses Programms.',
    newer: 'Diese Datei stammt von einer neueren Version. Lade diese Seite neu und wähle sie noch einmal.',
    damaged:
      'Einige Aufzeichnungen in dieser Datei sind nicht lesbar, deshalb wurde keine übernommen. Erzeuge die Datei auf dem Telefon neu.',
  },
}
