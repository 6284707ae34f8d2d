package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.app.CompareResult;
import evenrise.solver.app.EstimateState;
import evenrise.solver.app.EstimateState.Known;
import evenrise.solver.app.EstimateState.MakeUpLine;
import evenrise.solver.desk.EstimateAnswers.EstimateView;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EstimateRunTest {
    @TempDir
    private Path folder;

    private final List<EstimateView> told = new ArrayList<>();

    private EstimateRun run(Path hall) {
        Desk desk = PricedHall.desk(hall);
        EstimateRun[] run = new EstimateRun[1];
        run[0] = new EstimateRun(
                desk.state().orElseThrow(),
                PricedHall.request(hall, hall.resolve("estimate")),
                () -> told.add(run[0].view(desk.state(), "estimate")));
        return run[0];
    }

    private static EstimateState known(EstimateView view) {
        return view.known().orElseThrow().estimate();
    }

    /** The list is there before the first plan is; least is said when it is proven and not before. */
    @Test
    void makeUpsAreListedByPriceBeforeOneIsPlannedAndLeastIsSaidWithItsProof() {
        run(PricedHall.in(folder)).run(PricedHall.JOBS);

        EstimateState first = told.stream()
                .filter(each -> each.known().isPresent())
                .map(EstimateRunTest::known)
                .findFirst()
                .orElseThrow();
        assertThat(first.makeUps())
                .isNotEmpty()
                .isSortedAccordingTo(Comparator.comparing(MakeUpLine::price))
                .allMatch(each -> each.known() == Known.NOT_LOOKED_AT);
        assertThat(first.leastPrice()).isEmpty();
        assertThat(first.isProven()).isFalse();
        EstimateView last = told.get(told.size() - 1);
        assertThat(last.state()).isEqualTo("done");
        assertThat(last.isOfNow()).isTrue();
        assertThat(known(last).isProven()).isTrue();
        MakeUpLine cheapest = known(last).makeUps().stream()
                .filter(each -> each.known() == Known.SOUND)
                .findFirst()
                .orElseThrow();
        assertThat(known(last).leastPrice()).hasValue(cheapest.price());
        assertThat(known(last).makeUps().stream().filter(each -> each.price() < cheapest.price() - 1e-6))
                .allMatch(each -> each.known() == Known.RULED_OUT);
        assertThat(known(last).parts().get(0).sentences().get(0).text()).startsWith("Least price, proven");
        assertThat(known(last).planned()).extracting(each -> each.aim()).contains("usual");
    }

    @Test
    void whatIsToldIsWhatCompareFinds() {
        Path hall = PricedHall.in(folder);
        run(hall).run(PricedHall.JOBS);

        CompareResult alone = PricedHall.JOBS.compare(PricedHall.request(hall, folder.resolve("other")));
        EstimateState last = known(told.get(told.size() - 1));
        assertThat(last.leastPrice()).isEqualTo(alone.leastPrice());
        assertThat(last.isProven()).isEqualTo(alone.isLeastProven());
        assertThat(folder.resolve("estimate/make-ups.csv"))
                .hasSameBinaryContentAs(folder.resolve("other/make-ups.csv"));
    }

    @Test
    void stoppedBeforeItBeganItSaysSo() {
        EstimateRun run = run(PricedHall.in(folder));
        run.stop();
        run.run(PricedHall.JOBS);

        EstimateView last = told.get(told.size() - 1);
        assertThat(last.state()).isEqualTo("stopped");
        assertThat(known(last).isProven()).isFalse();
        assertThat(known(last).leastPrice()).isEmpty();
    }

    @Test
    void aProjectWithoutPricesFailsInWords() {
        run(Hall.in(folder)).run(PricedHall.JOBS);

        EstimateView last = told.get(told.size() - 1);
        assertThat(last.state()).isEqualTo("failed");
        assertThat(last.words()).contains("no catalogue with panel_types");
        assertThat(last.known()).isEqualTo(Optional.empty());
    }
}
