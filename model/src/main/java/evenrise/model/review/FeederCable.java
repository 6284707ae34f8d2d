package evenrise.model.review;

import evenrise.model.electrical.conductor.HarmonicReduction;
import evenrise.model.project.Cable;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;

/** The cable of a panel's or node's feeder as a limit of what that may draw: of its lines and of its neutral. */
record FeederCable(CableRun run, Carrying carrying, Duty duty, double neutralFactor, List<Practice> practices) {
    private static final int HALVINGS = 60;

    /** Empty where no cable is stated or no table stands for it. */
    static Optional<FeederCable> of(Layout layout, Point point) {
        Optional<Cable> cable = point.feeder().flatMap(Feeder::cable);
        if (cable.isEmpty()) {
            return Optional.empty();
        }
        Duty duty = ConductorCheck.feeder(layout, point);
        return CableRun.of(layout.project(), cable.get(), duty.breakerAmps())
                .flatMap(run -> Sizing.carrying(run, duty)
                        .map(carrying -> new FeederCable(
                                run,
                                carrying,
                                duty,
                                point.transformer().isPresent() ? 1 : point.neutralFactor(),
                                practices(layout))));
    }

    /** The one that the project states, else all: what is said then holds by each. */
    static List<Practice> practices(Layout layout) {
        return layout.project()
                .electrical()
                .flatMap(Electrical::practice)
                .map(List::of)
                .orElse(List.of(Practice.values()));
    }

    /** The greatest line current for which the cable is large enough, with no more third harmonic in its current than now. */
    double lineAmps() {
        double kept = 0;
        double lacking = 2 * carrying.correctedAmps();
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (kept + lacking) / 2;
            if (carries(middle)) {
                kept = middle;
            } else {
                lacking = middle;
            }
        }
        return kept;
    }

    private boolean carries(double lineAmps) {
        Duty drawn = new Duty(
                duty.place(),
                duty.label(),
                lineAmps,
                duty.breakerAmps(),
                duty.isContinuous(),
                duty.isFullyRated(),
                duty.loaded(),
                duty.thirdPercent(),
                duty.isBranch());
        return practices.stream()
                .flatMap(practice -> Sizing.shortfalls(run, carrying, drawn, practice).stream())
                .allMatch(Sizing.Shortfall::isProtection);
    }

    /**
     * What its neutral may carry: as a line conductor, by the panel's neutral factor. A factor below 1 is taken of the
     * ampacity (a conductor of half the metal carries more than half), one above 1 as whole conductors of the same size in
     * parallel (one of twice the metal carries less than twice).
     */
    double neutralAmps() {
        return carrying.amps() * harmonicFactor() * conductors();
    }

    /** How a neutral's ampacity comes about. */
    String neutralText() {
        String harmonic = harmonicFactor() == 1 ? "" : " × " + harmonicFactor() + " for its third harmonic";
        return carrying.text() + harmonic + (conductors() == 1 ? "" : " × " + conductors() + " of a line conductor");
    }

    private double conductors() {
        return neutralFactor < 1 ? neutralFactor : Math.floor(neutralFactor);
    }

    private double harmonicFactor() {
        boolean isReduced = practices.contains(Practice.IEC) && run.size().isMetric();
        return isReduced
                ? HarmonicReduction.of(duty.lineAmps(), duty.thirdPercent()).factor()
                : 1;
    }
}
