package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.solver.bounds.SourceShares;
import evenrise.solver.exact.DistributionSeating.Choice;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** What the peak of a source is at least by what is spread over time, and by what one output closes alone. */
final class DistributionShares {
    private final CpModel model;
    private final List<Load> loads;
    private final DistributionSeating seating;

    DistributionShares(CpModel model, List<Load> loads, DistributionSeating seating) {
        this.model = model;
        this.loads = loads;
        this.seating = seating;
    }

    /**
     * Rungs of the peak of a source, each at least as high as what one output closes there alone. Each is taken where one of
     * those, or a higher rung, is.
     */
    void rungs(SourceShares shares, IntVar peak) {
        Map<String, Double> alone = shares.aloneAmps();
        List<Load> rising = loads.stream()
                .filter(load -> alone.containsKey(load.id()))
                .sorted(Comparator.comparingDouble((Load load) -> alone.get(load.id()))
                        .thenComparing(Load::id))
                .toList();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        BoolVar below = null;
        long height = 0;
        for (Load load : rising) {
            BoolVar rung = model.newBoolVar("");
            for (Choice choice : seating.of(load)) {
                if (choice.seat().parts().containsKey(shares.source())) {
                    model.addImplication(choice.taken(), rung);
                }
            }
            if (below != null) {
                model.addImplication(rung, below);
            }
            long amps = ExactModelUnits.amps(alone.get(load.id()));
            sum.addTerm(rung, amps - height);
            below = rung;
            height = amps;
        }
        model.addGreaterOrEqual(peak, sum.build());
    }

    /** What is spread over time: a weighted mean of instants bears at least what loads cost at their cheapest ones. */
    void spread(SourceShares shares, Point source, IntVar peak) {
        model.addGreaterOrEqual(peak, ExactModelUnits.amps(shares.leastAmps()));
        for (Phase phase : source.system().phases()) {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            for (Load load : loads) {
                double amps = shares.ampsByLoad().getOrDefault(load.id(), 0.0);
                for (Choice choice : seating.of(load)) {
                    double part = choice.seat().part(source.index(), phase);
                    if (part > 0 && amps > 0) {
                        sum.addTerm(choice.taken(), ExactModelUnits.amps(part * amps));
                    }
                }
            }
            model.addGreaterOrEqual(peak, sum.build());
        }
    }
}
