package evenrise.model.review;

import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.electrical.conductor.HarmonicReduction;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Practice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Whether a run of conductors is large enough for its duty, and the least one that is. */
final class Sizing {
    /** NEC 240.4(B): the next standard rating above the ampacity is allowed up to this. */
    private static final double NEXT_SIZE_UP_TO_AMPS = 800;

    /** NEC 240.4(D) for copper, read in one copy. */
    private static final Map<String, Double> SMALL_COPPER = Map.of("14 AWG", 15.0, "12 AWG", 20.0, "10 AWG", 30.0);

    /** NEC 240.4(D) for aluminium, read on a page that quotes it. */
    private static final Map<String, Double> SMALL_ALUMINIUM = Map.of("12 AWG", 15.0, "10 AWG", 25.0);

    private static final int MOST_SETS = 10;

    private static final String PROTECTS = "rating that protects its cable";

    /**
     * What is asked of a run.
     *
     * @param figure names what needs the current, among the quantities
     * @param isProtection whether its breaker is not to be too large for it, else what it carries is not to be too little
     * @param what needs the current
     */
    record Shortfall(
            String figure,
            boolean isProtection,
            double neededAmps,
            double allowedAmps,
            String what,
            String arithmetic,
            String clause) {
        boolean isLacking() {
            return neededAmps > allowedAmps + 1e-9;
        }
    }

    private Sizing() {}

    /** Empty where no table stands for the run. */
    static Optional<Carrying> carrying(CableRun run, Duty duty) {
        return run.carrying(Math.min(3, duty.loaded()), duty.loaded());
    }

    /** What a run lacks: at most one thing of what it carries, and one of what protects it. */
    static List<Shortfall> shortfalls(CableRun run, Carrying carrying, Duty duty, Practice practice) {
        List<Shortfall> asked = asked(run, carrying, duty, practice);
        return Stream.of(false, true)
                .flatMap(
                        isProtection -> asked.stream()
                                .filter(each -> each.isProtection() == isProtection && each.isLacking())
                                .findFirst()
                                .stream())
                .toList();
    }

    /** All that is asked of a run, kept or not. */
    static List<Shortfall> asked(CableRun run, Carrying carrying, Duty duty, Practice practice) {
        List<Shortfall> found = new ArrayList<>();
        if (practice == Practice.NEC) {
            nec(run, carrying, duty, found);
        } else {
            iec(carrying, duty, found);
        }
        return found;
    }

    /** The first of the larger sizes, then of more sets with more metal in all, that lacks nothing. */
    static Optional<CableRun> enough(CableRun run, Duty duty, Practice practice) {
        Stream<CableRun> larger = run.size().larger().stream().map(size -> run.with(size, run.sets()));
        double metal = run.sets() * run.size().squareMillimetres();
        List<ConductorSize> system = run.size().isMetric() ? ConductorSize.METRIC : ConductorSize.AMERICAN;
        Stream<CableRun> more = IntStream.rangeClosed(run.sets() + 1, MOST_SETS)
                .boxed()
                .flatMap(sets -> system.stream()
                        .filter(size -> size.mayBeParallel() && sets * size.squareMillimetres() > metal)
                        .map(size -> run.with(size, sets)));
        return Stream.concat(larger, more)
                .filter(each -> carrying(each, duty)
                        .filter(carrying ->
                                shortfalls(each, carrying, duty, practice).isEmpty())
                        .isPresent())
                .findFirst();
    }

    private static void nec(CableRun run, Carrying carrying, Duty duty, List<Shortfall> found) {
        double carries = carrying.amps();
        // 125 % is held against the table alone, the current itself against the corrected ampacity.
        double continuous = ContinuousLoad.necAmps(duty.lineAmps(), duty.isContinuous(), duty.isFullyRated());
        double tabulated = carrying.terminalAmps().orElse(carries);
        String clause = duty.isBranch() ? "NEC 210.19(A)" : "NEC 215.2(A)";
        boolean isMore = duty.isContinuous() && !duty.isFullyRated();
        found.add(new Shortfall(
                "current before correction" + (isMore ? ", 125 % of what is continuous" : ""),
                false,
                continuous,
                tabulated,
                isMore ? "125 % of its continuous current before correction" : "its current before correction",
                carrying.terminals(),
                clause));
        found.add(new Shortfall(
                "current of its cable",
                false,
                duty.lineAmps(),
                carries,
                "its current after correction",
                carrying.text(),
                clause));
        Map<String, Double> small = run.cable().material() == ConductorMaterial.COPPER ? SMALL_COPPER : SMALL_ALUMINIUM;
        Double most = small.get(run.size().name());
        if (most != null) {
            found.add(new Shortfall(
                    "rating that protects a small conductor",
                    true,
                    duty.breakerAmps(),
                    most,
                    "",
                    "whatever its ampacity, " + carrying.text(),
                    "NEC 240.4(D)"));
        }
        boolean mayRoundUp = carries <= NEXT_SIZE_UP_TO_AMPS;
        double allowed = mayRoundUp
                ? Math.min(
                        NEXT_SIZE_UP_TO_AMPS,
                        StandardRatings.atLeast(Practice.NEC, carries).orElse(carries))
                : carries;
        found.add(new Shortfall(
                PROTECTS,
                true,
                duty.breakerAmps(),
                Math.max(allowed, carries),
                "",
                carrying.text() + (mayRoundUp ? ", the next standard rating" : ""),
                mayRoundUp ? "NEC 240.4(B)" : "NEC 240.4(C)"));
    }

    private static void iec(Carrying carrying, Duty duty, List<Shortfall> found) {
        HarmonicReduction harmonics = HarmonicReduction.of(duty.lineAmps(), duty.thirdPercent());
        double reduced = carrying.amps() * harmonics.factor();
        String arithmetic = harmonics.factor() == 1
                ? carrying.text()
                : carrying.text() + ", × " + harmonics.factor() + " for its third harmonic";
        found.add(new Shortfall(
                harmonics.isByNeutral() ? "current of its cable's neutral, which governs" : "current of its cable",
                false,
                harmonics.governingAmps(),
                reduced,
                harmonics.isByNeutral() ? "its neutral's current, which governs," : "its current",
                arithmetic,
                duty.thirdPercent() > 15 ? "IEC 60364-5-52 annex E" : "IEC 60364-4-43 clause 433.1"));
        found.add(new Shortfall(
                PROTECTS, true, duty.breakerAmps(), reduced, "", arithmetic, "IEC 60364-4-43 clause 433.1"));
    }
}
