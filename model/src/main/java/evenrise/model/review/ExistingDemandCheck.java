package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.RemarkBuilder;
import evenrise.model.project.DemandBasis;
import evenrise.model.project.ExistingDemand;
import evenrise.model.project.Phase;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Tolerances;
import java.util.List;

/** Whether a service or feeder that feeds a building, too, carries what is new on it: NEC 220.87. */
final class ExistingDemandCheck implements ElectricalCheck {
    private static final String ID = "existing-demand";
    private static final String CLAUSE = "NEC 220.87";

    /** NEC 220.87(2): the maximum demand at 125 percent plus the new load. */
    private static final double DEMAND_FACTOR = 1.25;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Supply supply = layout.project().supply();
        if (supply.existingDemand().isEmpty()) {
            return;
        }
        ExistingDemand demand = supply.existingDemand().get();
        if (demand.offset()) {
            findings.notChecked(
                    ID,
                    List.of(NodeFigures.SUPPLY),
                    "a calculation of the existing load; where sources or shaved peaks offset it, a recording is none ("
                            + CLAUSE + ")");
            return;
        }
        findings.made(ID, NodeFigures.SUPPLY);
        double added = newAmps(layout, demand);
        double figure = DEMAND_FACTOR * demand.maxAmps() + added;
        double limit = demand.ampacityAmps().orElse(supply.ratedAmps());
        findings.add(new Quantity(NodeFigures.SUPPLY, "new load beside the existing demand", added, "A"));
        findings.add(new Quantity(NodeFigures.SUPPLY, "existing demand at 125 % and the new load", figure, "A")
                .atMost(limit, CLAUSE));
        if (figure > limit + Tolerances.AMPS) {
            findings.add(remark("over-ampacity", Grade.BREAKS, figure, limit)
                    .message("the recorded demand of " + HUNDREDTHS.amps(demand.maxAmps(), limit)
                            + " at 125 % and the new load of " + HUNDREDTHS.amps(added, limit) + " are "
                            + HUNDREDTHS.amps(figure, limit) + " on the highest phase, the feeder or service carries "
                            + HUNDREDTHS.amps(limit, figure))
                    .cure("feed the new load from elsewhere, or ask for a larger feeder or service")
                    .build());
        }
        if (demand.basis() == DemandBasis.THIRTY_DAYS) {
            findings.add(remark("thirty-days", Grade.NOTE, figure, limit)
                    .message("the demand was recorded over thirty days: it counts only where the building was occupied,"
                            + " on its highest loaded phase, and with what is seasonal, such as the larger of heating and"
                            + " cooling, measured or added.")
                    .build());
        }
    }

    /** On the phase that gets most of them: loads that did not run while the demand was recorded. */
    private static double newAmps(Layout layout, ExistingDemand demand) {
        double most = 0;
        for (Phase phase : Phase.values()) {
            double amps = 0;
            for (NodeLoads.Seen seen : layout.nodeLoads().seen(0)) {
                if (!demand.recordedLoads().contains(seen.placement().id())) {
                    amps += seen.parts()[phase.ordinal()]
                            * seen.placement().load().runningAmps();
                }
            }
            most = Math.max(most, amps);
        }
        return most;
    }

    private static RemarkBuilder remark(String kind, Grade grade, double figure, double limit) {
        return Remark.builder()
                .check(ID)
                .kind(kind)
                .grade(grade)
                .place(NodeFigures.SUPPLY)
                .figure(figure)
                .limit(limit)
                .unit("A")
                .clause(CLAUSE);
    }
}
