package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Ratings of lines and neutrals, of the supply and each panel, for a program that may let too much pass and never forbids
 * what is allowed: what loads draw is rounded down, what may flow up. A neutral is as long as its greatest component, so
 * that each of some directions is held to its rating; between them a little more passes.
 */
final class LeastMovesCurrents {
    private static final int DIRECTIONS = 12;

    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;

    private LeastMovesCurrents(CpModel model, Project project, ExactModelPlaces places) {
        this.model = model;
        this.project = project;
        this.places = places;
    }

    static void add(CpModel model, Project project, ExactModelPlaces places) {
        LeastMovesCurrents it = new LeastMovesCurrents(model, project, places);
        for (NodeLimits node : NodeLimits.of(project)) {
            project.supply().system().phases().forEach(phase -> it.line(node, phase));
            directions().forEach(direction -> it.neutral(node, direction));
        }
    }

    private void line(NodeLimits node, Phase phase) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Load load : project.loads()) {
            places.spots(load).forEach((spot, there) -> {
                if (ExactModelCurrents.feeds(node.node(), spot) && spot.phases().contains(phase)) {
                    sum.addTerm(there, ExactModelUnits.amps(load.runningAmps()));
                }
            });
        }
        model.addLessOrEqual(sum.build(), allowed(node.continuousAmps()));
    }

    private void neutral(NodeLimits node, ToDoubleFunction<NeutralCurrent.Share> component) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Load load : project.loads()) {
            if (load.poles() == 1) {
                places.spots(load).forEach((spot, there) -> {
                    if (ExactModelCurrents.feeds(node.node(), spot)) {
                        NeutralCurrent.Share share = NeutralCurrent.share(
                                project.supply().system(),
                                spot.phases().get(0),
                                load.runningAmps(),
                                Lag.of(load),
                                load.harmonicRatio());
                        sum.addTerm(there, ExactModelUnits.amps(component.applyAsDouble(share)));
                    }
                });
            }
        }
        model.addLessOrEqual(sum.build(), allowed(node.neutralAmps()));
    }

    /** In the plane of the fundamentals, along the third harmonics, and halfway between. */
    private static List<ToDoubleFunction<NeutralCurrent.Share>> directions() {
        List<ToDoubleFunction<NeutralCurrent.Share>> all = new ArrayList<>();
        for (int third = 0; third <= 1; third++) {
            for (int i = 0; i < DIRECTIONS; i++) {
                double angle = 2 * Math.PI * i / DIRECTIONS;
                double length = Math.sqrt(1 + third);
                double along = third;
                all.add(share -> (share.realAmps() * Math.cos(angle)
                                + share.imaginaryAmps() * Math.sin(angle)
                                + share.thirdAmps() * along)
                        / length);
            }
        }
        all.add(NeutralCurrent.Share::thirdAmps);
        return all;
    }

    private static long allowed(double amps) {
        return (long) Math.ceil((amps + Tolerances.AMPS) * ExactModelUnits.PER_AMP);
    }
}
