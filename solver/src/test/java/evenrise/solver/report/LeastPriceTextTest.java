package evenrise.solver.report;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.solver.compare.Aim;
import evenrise.solver.compare.Judged;
import evenrise.solver.compare.Judged.Standing;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.MakeUp;
import evenrise.solver.compare.Scenario;
import evenrise.solver.compare.ScenarioResult;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LeastPriceTextTest {
    private static Judged judged(int number, double price, Standing standing) {
        MakeUp makeUp = new MakeUp(List.of(), List.of(), price);
        ScenarioResult finding = new ScenarioResult(
                new Scenario(
                        "try-0000" + number,
                        Aim.USUAL,
                        makeUp,
                        aProject().loads(aLoad("a")).build()),
                Plan.builder().boards(List.of()).assignments(List.of()).build(),
                Optional.empty());
        return new Judged(
                number,
                makeUp,
                standing,
                Optional.empty(),
                standing == Standing.SOUND ? Optional.of(finding) : Optional.empty());
    }

    private static String text(boolean wasStopped, List<String> leftOut, Judged... makeUps) {
        LeastPrice least = new LeastPrice(
                List.of(makeUps),
                Double.POSITIVE_INFINITY,
                wasStopped,
                List.of("Spare: as the project asks."),
                leftOut,
                List.of());
        return String.join(" ", LeastPriceText.lines("Hall", "EUR", least, Paint.NONE))
                .replaceAll("\\s+", " ");
    }

    @Test
    void saysLeastOnlyOfWhatIsProven() {
        assertThat(text(false, List.of(), judged(1, 90, Standing.RULED_OUT), judged(2, 100, Standing.SOUND)))
                .contains("Least price, proven: 100.00", "(try-00002)", "Spare: as the project asks.")
                .doesNotContain("Not proven");
    }

    @Test
    void saysWhatIsOpenBelowAPriceThatIsNotProven() {
        String text = text(
                true,
                List.of(),
                judged(1, 90, Standing.RULED_OUT),
                judged(2, 95, Standing.UNDECIDED),
                judged(3, 97, Standing.NOT_LOOKED_AT),
                judged(4, 100, Standing.SOUND));

        assertThat(text)
                .contains(
                        "Cheapest make-up found that stands: 100.00",
                        "nothing below 95.00 is open, 5.00 % less",
                        "1 make-up planned without a sound plan (from 95.00)",
                        "1 make-up not looked at (from 97.00)",
                        "stopped before all was done")
                .doesNotContain("Least price");
    }

    @Test
    void saysFromWhatPriceOnAnythingMayStandWhereNothingWasFound() {
        assertThat(text(false, List.of(), judged(1, 90, Standing.RULED_OUT), judged(2, 95, Standing.UNDECIDED)))
                .contains("No make-up was found", "None costs less than 95.00");
    }

    @Test
    void saysThatAProofSpeaksOfPricedTypesAlone() {
        assertThat(text(false, List.of("panel type 'X' (no price of feeders)"), judged(1, 100, Standing.SOUND)))
                .contains("Least price, proven among the types that have a price: 100.00", "panel type 'X'");
    }
}
