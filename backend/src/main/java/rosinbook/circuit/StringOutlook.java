package rosinbook.circuit;

import rosinbook.pitch.Note;

/**
 * What becomes of one open string's lowest tone on its way from a piezo element into a resistance.
 *
 * @param string 1 is the highest
 * @param openNote its open note
 * @param hertz frequency of that note at A4 = 440 Hz
 * @param inputOhms the resistance it meets, Ω
 * @param cornerHertz where the high-pass has lost 3.01 dB, Hz, cable included
 * @param cornerDecibels what the high-pass takes from the open note, dB, 0 or below
 * @param cableDecibels what the cable takes from every note, dB, 0 or below
 * @param wantsPreamp whether both together take more than 3 dB, which a preamp of 10 MΩ at the instrument would mend
 * @param sentence the same in words
 */
public record StringOutlook(
        int string,
        Note openNote,
        double hertz,
        double inputOhms,
        double cornerHertz,
        double cornerDecibels,
        double cableDecibels,
        boolean wantsPreamp,
        String sentence) {}
