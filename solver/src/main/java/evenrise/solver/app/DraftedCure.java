package evenrise.solver.app;

import evenrise.solver.report.ReworkText;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.MoveKind;
import evenrise.solver.rework.WorkMinutes;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A plan of the front: what it comes to and what it costs.
 *
 * @param label what it is in the front, in a word or two; empty for what lies between
 * @param moves breakers re-terminated and control leads re-landed
 * @param minutes the least that all of it takes in one go
 * @param objective in ampere-equivalents
 * @param sparePercent least part of what a line may carry, of any node, that running currents leave
 * @param kinds of work that it asks for
 * @param night what the program's order of its work costs; empty until that is known
 * @since 0.1.0
 */
public record DraftedCure(
        int number,
        String label,
        int moves,
        int breakers,
        int leads,
        int settings,
        int removals,
        double minutes,
        int hardViolations,
        double objective,
        double sparePercent,
        List<Kind> kinds,
        Optional<Night> night) {
    public DraftedCure {
        kinds = List.copyOf(kinds);
    }

    /** A kind of work: in words, how often, and the minutes of each. */
    public record Kind(String words, int count, double eachMinutes, boolean isStated) {}

    /**
     * What its order costs.
     *
     * @param nights that are used: of those stated, else of one shift each
     * @param left stages for which no night is left, or that are longer than a shift
     * @param outages shutdown groups of which a load is off, over all stages
     * @param refused what is broken on the way
     */
    public record Night(
            int stages,
            double minutes,
            int nights,
            boolean areStated,
            int left,
            int systemOffs,
            int isolations,
            int outages,
            int refused) {}

    static DraftedCure of(int number, Front front, FrontPoint point, WorkMinutes minutes, Optional<Night> night) {
        return new DraftedCure(
                number,
                number < 0 ? "as built" : ReworkText.label(front, point),
                point.moves(),
                point.changes().breakers(),
                point.changes().leads(),
                point.changes().settingsInAll(),
                point.changes().removals().size(),
                point.minutes(),
                point.violations(),
                point.objective(),
                point.marginPercent(),
                Arrays.stream(MoveKind.values())
                        .filter(kind -> point.night().count(kind) > 0)
                        .map(kind -> new Kind(
                                words(kind), point.night().count(kind), minutes.of(kind), minutes.isStated(kind)))
                        .toList(),
                night);
    }

    private static String words(MoveKind kind) {
        return switch (kind) {
            case SAME_PANEL -> "breaker in its panel";
            case OTHER_PANEL -> "breaker to another panel";
            case NEW_CIRCUIT -> "new breaker";
            case LEAD -> "lead to another output";
            case DRAWN_LEAD -> "lead drawn";
            case SHUTDOWN -> "system off and on";
            case ISOLATION -> "panel or board isolated";
            case REMOVAL -> "breaker out for good";
            case SETTING -> "board or output set";
            case SWITCHING -> "load switched by hand";
            case TEST -> "load locked out and tried";
        };
    }
}
