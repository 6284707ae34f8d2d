package evenrise.solver.engine.move;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.project.SwitchedBy;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class PlaceExchangeTest {
    /** Three contactors with one, two and three loads of one to three poles behind them, in two panels that are nearly full. */
    private static CompiledProject crowded() {
        List<LoadBuilder> loads = new ArrayList<>();
        for (int lead = 1; lead <= 3; lead++) {
            String id = "K" + lead;
            loads.add(aLoad(id).poles(lead).with(it -> it.switchedBy(SwitchedBy.CONTACTOR)));
            for (int n = 1; n <= lead; n++) {
                loads.add(aLoad(id + "-" + n).poles(n).with(it -> it.comesWith(Optional.of(id))));
            }
        }
        loads.add(aLoad("alone").twoPole());
        loads.add(aLoad("lights").unswitched());
        return new CompiledProject(aProject()
                .panels(aPanel("P1").slots(18), aPanel("P2").slots(18))
                .boards(aBoard("B1").reaches("P1", "P2"))
                .loads(loads)
                .build());
    }

    @Test
    void givesEachLoadASlotOfItsOwnAlsoWhereContactorsMove() {
        CompiledProject compiled = crowded();
        PlanSums sums = FirstPlan.build(compiled);
        assertThat(sums.unassigned()).isZero();
        Targets targets = new Targets(sums);
        PlaceExchange exchange = new PlaceExchange();
        DraftMove draft = new DraftMove(sums);
        SplittableRandom random = new SplittableRandom(1);
        TreeSet<Integer> panelsOfLead = new TreeSet<>();
        int largest = 0;

        for (int i = 0; i < 30_000; i++) {
            draft.clear();
            if (exchange.draw(sums, targets, random, draft)) {
                draft.apply();
                largest = Math.max(largest, draft.loadCount());
                Map<Integer, Integer> taken = new HashMap<>();
                for (int load = 0; load < compiled.loadCount(); load++) {
                    for (int slot : sums.placeOf(load).slots()) {
                        assertThat(taken.put(slot, load)).as("slot %d", slot).isNull();
                        assertThat(sums.loadInSlot(slot)).isEqualTo(load);
                    }
                }
                panelsOfLead.add(sums.placeOf(0).panel());
            }
        }

        assertThat(panelsOfLead).containsExactly(0, 1);
        assertThat(largest).as("loads of one change").isGreaterThan(3);
    }
}
