package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;

/**
 * Currents at which a breaker must hold, and must trip, within its conventional time (1 h up to 63 A by IEC 60898-1 and up to
 * 50 A by UL 489, 2 h above), over its rating. IEC values read in a breaker's manual; UL 489: 100 % and 135 %, read in a
 * test table.
 */
public record ConventionalCurrents(double holdsRatio, double tripsRatio) {
    public static ConventionalCurrents of(Practice practice) {
        return practice == Practice.IEC ? new ConventionalCurrents(1.13, 1.45) : new ConventionalCurrents(1, 1.35);
    }
}
