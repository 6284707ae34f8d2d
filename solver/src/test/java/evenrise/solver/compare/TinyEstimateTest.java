package evenrise.solver.compare;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.file.SideNotes;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.BoardType;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.EveryPlantPlan;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Of tiny estimates: no make-up that costs less than what is called proven has any plan that keeps every rule. */
class TinyEstimateTest {
    private static final int SAMPLE = 6;
    private static final int ESTIMATES = Integer.getInteger("evenrise.estimates", 20);
    private static final int MOST_OF_A_KIND = 4;

    /** Make-ups of more plans are not looked at one by one. */
    private static final long MOST_PLANS = Long.getLong("evenrise.estimates.plans", 400);

    @TempDir
    private Path folder;

    @Test
    void noCheaperMakeUpStands() throws Exception {
        assertThat(proven(LongStream.rangeClosed(1, SAMPLE)))
                .as("estimates with a proven least price")
                .isGreaterThan(SAMPLE / 2);
    }

    @Tag("slow")
    @Test
    void noCheaperMakeUpOfManyStands() throws Exception {
        assertThat(proven(LongStream.range(1_000, 1_000 + ESTIMATES)))
                .as("estimates with a proven least price")
                .isGreaterThan(ESTIMATES / 2);
    }

    private int proven(LongStream seeds) throws Exception {
        int proven = 0;
        for (long seed : seeds.toArray()) {
            proven += holds(seed) ? 1 : 0;
        }
        return proven;
    }

    /** Whether a least price is proven; fails where a make-up stands for less than is said to be open. */
    private boolean holds(long seed) throws Exception {
        Project project = TinyEstimate.of(seed);
        Variation variation = new Variation(project);
        Sweep sweep = new Sweep(
                variation,
                folder.resolve("" + seed),
                SideNotes.NONE,
                300,
                seed,
                true,
                new ScenarioPool(1, TinyEstimateTest::finished));
        Files.createDirectories(folder.resolve("" + seed));
        LeastPrice least = new Comparison(variation, List.of(), Optional.empty(), Optional.empty())
                .leastPrice(sweep, 6, state -> {}, finding -> {});
        double limit = Math.min(
                least.undecidedFrom(),
                least.cheapest().map(each -> each.makeUp().price()).orElse(Double.POSITIVE_INFINITY));
        for (MakeUp makeUp : everyMakeUp(project, variation)) {
            if (makeUp.price() < limit - LeastPrice.SAME_PRICE) {
                Project built = variation.built(makeUp);
                if (EveryPlantPlan.count(built) <= MOST_PLANS) {
                    int[] sound = {0};
                    EveryPlantPlan.sound(built, Optional.empty(), (plan, verdict) -> sound[0]++);
                    assertThat(sound[0])
                            .as(
                                    "plans of %s and %s for %.2f, below %.2f, seed %d",
                                    makeUp.panelWords(), makeUp.boardWords(), makeUp.price(), limit, seed)
                            .isZero();
                }
            }
        }
        return least.isProven();
    }

    /** Judged and no more. */
    private static Plan finished(Sweep.Found found) {
        Project project = found.request().project();
        Layout layout =
                Layout.of(project, PlanFinisher.timed(project, found.outcome().plan()));
        Bounds nothing = Bounds.builder()
                .objective(0)
                .peakInrushAmps(0)
                .supplyDeviationAmps(0)
                .panelDeviationsAmps(0)
                .durationSeconds(0)
                .build();
        return PlanFinisher.judged(layout, Referee.judge(layout), nothing);
    }

    /** By the bill of the project as it would be built. */
    private static MakeUp priced(Variation variation, MakeUp makeUp) {
        BillOfMaterials bill = BillOfMaterials.of(variation.built(makeUp));
        return new MakeUp(makeUp.panels(), makeUp.boards(), bill.total().doubleValue());
    }

    /** Up to so many of each kind, in no order. */
    private static List<MakeUp> everyMakeUp(Project project, Variation variation) {
        List<PanelType> panels = project.catalogue().orElseThrow().panelTypes();
        List<BoardType> boards = project.boardTypes();
        List<MakeUp> all = new ArrayList<>();
        int ways = (int) Math.pow(MOST_OF_A_KIND + 1, 4);
        for (int way = 0; way < ways; way++) {
            int left = way;
            List<PanelKind> panelKinds = new ArrayList<>();
            List<BoardKind> boardKinds = new ArrayList<>();
            for (int kind = 0; kind < 2; kind++) {
                PanelType type = panels.get(kind);
                panelKinds.addAll(Collections.nCopies(
                        left % (MOST_OF_A_KIND + 1),
                        new PanelKind(variation.points().get(0), type, 0, Set.of())));
                left /= MOST_OF_A_KIND + 1;
            }
            for (int kind = 0; kind < 2; kind++) {
                BoardType type = boards.get(kind);
                boardKinds.addAll(Collections.nCopies(
                        left % (MOST_OF_A_KIND + 1), new BoardKind(Optional.empty(), type, 0, Set.of())));
                left /= MOST_OF_A_KIND + 1;
            }
            if (!panelKinds.isEmpty()) {
                all.add(priced(variation, new MakeUp(panelKinds, boardKinds, 0)));
            }
        }
        return all;
    }
}
