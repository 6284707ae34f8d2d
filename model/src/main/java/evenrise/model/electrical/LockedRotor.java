package evenrise.model.electrical;

import evenrise.model.project.CodeLetter;

/**
 * What a motor draws at standstill, from the code letter on its nameplate: apparent power at locked rotor over horsepower.
 * Ranges as NEC table 430.7(B), read in three secondary copies, of which one misprints the upper end of B.
 */
public final class LockedRotor {
    private LockedRotor() {}

    /**
     * Rms line current at locked rotor.
     *
     * @param kvaPerHorsepower of the code letter
     * @param voltAmpsPerAmp see {@link LinePower#voltAmpsPerAmp}
     */
    public static double amps(double kvaPerHorsepower, double horsepower, double voltAmpsPerAmp) {
        return 1000 * kvaPerHorsepower * horsepower / voltAmpsPerAmp;
    }

    /** The most that a motor with this letter may draw; V is open above, its lower end is taken. */
    public static double greatestAmps(CodeLetter letter, double horsepower, double voltAmpsPerAmp) {
        return amps(letter.mostKvaPerHorsepower(), horsepower, voltAmpsPerAmp);
    }
}
