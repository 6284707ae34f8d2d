package evenrise.model.measured;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.measured.OnSite.idle;
import static evenrise.model.measured.OnSite.peak;
import static evenrise.model.measured.OnSite.poles;
import static evenrise.model.measured.OnSite.running;
import static evenrise.model.measured.OnSite.runningOn;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.measured.FieldChange.Kind;
import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RefitTest {
    private static Refitted refitted(PoleReading... readings) {
        return Refit.of(OnSite.project(), poles(readings), load -> false);
    }

    private static Load load(Refitted refitted, String id) {
        return refitted.project().loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void raisesToTheReadingWithAllThatItMayBeOffBy() {
        Load one = load(refitted(idle("one", Phase.A, 3)), "one");

        // 3 A and 2 % of it
        assertThat(one.idleAmps()).isCloseTo(3.06, within(1e-9));
        assertThat(one.measured()).singleElement().satisfies(each -> {
            assertThat(each.value()).isEqualTo(3);
            assertThat(each.spread()).isCloseTo(0.06, within(1e-9));
            assertThat(each.stated()).isEqualTo(2);
            assertThat(each.date()).contains("2026-03-14");
            assertThat(each.meter()).contains("M1");
            assertThat(each.taken()).isTrue();
        });
    }

    @Test
    void keepsWhatIsStatedWhereLessWasReadAndNobodyConfirmed() {
        Refitted refitted = refitted(running("one", 3));

        assertThat(load(refitted, "one").runningAmps()).isEqualTo(6);
        assertThat(refitted.changes()).extracting(FieldChange::kind).containsExactly(Kind.KEPT);
        assertThat(load(refitted, "one").measured())
                .extracting(MeasuredValue::taken)
                .containsExactly(false);
    }

    @Test
    void lowersWhatSomebodyConfirmedToBeFullUse() {
        Refitted refitted = Refit.of(OnSite.project(), poles(running("one", 3)), "one"::equals);

        assertThat(load(refitted, "one").runningAmps()).isCloseTo(3.06, within(1e-9));
        assertThat(load(refitted, "one").measured())
                .extracting(MeasuredValue::fullUse)
                .containsExactly(true);
    }

    /** A load with a stated peak of 51 A whose peak was read on site, full use confirmed. */
    private static Refitted closed(double readAmps) {
        Project project =
                aProject().loads(aLoad("inrush").idleAmps(2).inrushPeakAmps(51)).build();
        return Refit.of(project, poles(peak("inrush", readAmps)), load -> true);
    }

    @Test
    void raisesAPeakThatASingleClosingPassed() {
        // 50.1 A and 2 % of it are 51.102 A
        assertThat(load(closed(50.1), "inrush").inrushAmps()).isCloseTo(51.102, within(1e-9));
        assertThat(closed(50.1).changes()).extracting(FieldChange::kind).containsExactly(Kind.RAISED);
    }

    @Test
    void leavesAPeakThatASingleClosingJustReached() {
        // 50 A and 2 % of it are the 51 A that are stated
        assertThat(load(closed(50), "inrush").inrushAmps()).isEqualTo(51);
        assertThat(closed(50).changes()).extracting(FieldChange::kind).containsExactly(Kind.KEPT);
    }

    @Test
    void neverLowersAPeakByASingleClosingEvenWhereFullUseIsConfirmed() {
        Refitted refitted = closed(20);

        assertThat(load(refitted, "inrush").inrushAmps()).isEqualTo(51);
        assertThat(refitted.changes()).singleElement().satisfies(each -> {
            assertThat(each.kind()).isEqualTo(Kind.KEPT);
            assertThat(each.why()).contains("a peak is of one closing");
        });
        assertThat(load(refitted, "inrush").measured()).singleElement().satisfies(each -> {
            assertThat(each.value()).isEqualTo(20);
            assertThat(each.taken()).isFalse();
            assertThat(each.fullUse()).isFalse();
        });
    }

    @Test
    void lowersNoFurtherThanAnEarlierVisitRead() {
        Project once = refitted(running("one", 5)).project();

        Refitted again = Refit.of(once, poles(runningOn("2026-05-01", "one", 3)), "one"::equals);

        // 5 A and 2 % of it; 6 A are stated
        assertThat(load(again, "one").runningAmps()).isCloseTo(5.1, within(1e-9));
        assertThat(again.changes()).extracting(FieldChange::kind).containsExactly(Kind.LOWERED);
        assertThat(again.changes())
                .extracting(FieldChange::why)
                .allMatch(why -> why.contains("earlier visit read more"));
    }

    /** Idle current as stated: 4 A. */
    private static double idleAfter(double readAmps) {
        return load(Refit.of(OnSite.project(), poles(idle("two", Phase.B, readAmps)), load -> true), "two")
                .idleAmps();
    }

    @Test
    void lowersNothingByALoadThatDidNotDraw() {
        assertThat(idleAfter(0)).isEqualTo(4);
        assertThat(idleAfter(1)).isCloseTo(1.02, within(1e-9));
    }

    @Test
    void takesTheGreatestOfThePoles() {
        Load three = load(refitted(idle("three", Phase.A, 1.2), idle("three", Phase.B, 1.5)), "three");

        assertThat(three.idleAmps()).isCloseTo(1.53, within(1e-9));
    }

    @Test
    void neverLetsALoadRunAtLessThanItIdles() {
        Load one = load(refitted(idle("one", Phase.A, 7)), "one");

        assertThat(one.runningAmps()).isEqualTo(one.idleAmps()).isCloseTo(7.14, within(1e-9));
    }

    @Test
    void countsNoLongerAsGuessedWhatWasTaken() {
        assertThat(load(refitted(idle("two", Phase.B, 5)), "two").guessed()).isEmpty();
        assertThat(load(refitted(idle("two", Phase.B, 2)), "two").guessed()).containsExactly("idle_a");
    }

    @Test
    void leavesALoadWithoutReadingAlone() {
        assertThat(load(refitted(running("one", 3)), "two"))
                .isEqualTo(OnSite.project().loads().get(1));
    }

    @Test
    void holdsADriftAgainstWhatWasMeasuredBefore() {
        Project once = refitted(idle("one", Phase.A, 3)).project();

        List<Discrepancy> still = LoadCurrents.of(OnSite.layout(once).placements(), poles(idle("one", Phase.A, 3.1)));
        List<Discrepancy> drift = LoadCurrents.of(OnSite.layout(once).placements(), poles(idle("one", Phase.A, 3.2)));

        // 2 % of 3 A and 2 % of 3.1 A allow for 0.122 A
        assertThat(still).isEmpty();
        assertThat(drift).extracting(Discrepancy::cause).containsExactly("it has changed since 2026-03-14");
    }

    private static LoadBuilder amplifier(String id) {
        return aLoad(id).runningAmps(8).idleAmps(1).breakerAmps(16).with(more -> more.kind("amplifier of type X"));
    }

    /** Three of a kind measured, a fourth whose idle current is guessed. */
    private static Refitted learnt(double guess, double... read) {
        List<LoadBuilder> loads = new ArrayList<>();
        List<PoleReading> readings = new ArrayList<>();
        for (int i = 0; i < read.length; i++) {
            loads.add(amplifier("X" + i));
            readings.add(idle("X" + i, Phase.A, read[i]));
        }
        loads.add(amplifier("guessed").idleAmps(guess).guessed("idle_a"));
        return Refit.of(aProject().loads(loads).build(), poles(readings.toArray(PoleReading[]::new)), load -> false);
    }

    @Test
    void raisesAGuessByWhatOthersOfItsKindWereMeasuredAt() {
        Refitted learnt = learnt(1, 1.5, 1.6, 1.7);

        // With 2 %: mean 1.632, deviation 0.102; t of 2 degrees of freedom 2.92; 1.632 + 2.92 · 0.102 · √(4/3)
        assertThat(load(learnt, "guessed").idleAmps())
                .isCloseTo(1.632 + 2.92 * 0.102 * Math.sqrt(4 / 3.0), within(1e-3));
        assertThat(load(learnt, "guessed").guessed()).containsExactly("idle_a");
        assertThat(learnt.count(Kind.RAISED_BY_CLASS)).isOne();
    }

    @Test
    void neverLowersAGuessByOthers() {
        Refitted learnt = learnt(1, 0.5, 0.5, 0.5);

        assertThat(load(learnt, "guessed").idleAmps()).isEqualTo(1);
        assertThat(learnt.count(Kind.KEPT_BESIDE_CLASS)).isOne();
    }

    @Test
    void learnsFromEachOfThemOnceHoweverOftenItWasVisited() {
        List<PoleReading> visits = new ArrayList<>();
        for (int day = 1; day <= 3; day++) {
            visits.add(runningOn("2026-04-0" + day, "X0", 9));
            visits.add(runningOn("2026-04-0" + day, "X1", 9));
        }
        Project project = aProject()
                .loads(amplifier("X0"), amplifier("X1"), amplifier("guessed").guessed("running_a"))
                .build();

        Refitted learnt = Refit.of(project, poles(visits.toArray(PoleReading[]::new)), load -> false);

        assertThat(load(learnt, "guessed").runningAmps()).isEqualTo(8);
        assertThat(learnt.count(Kind.RAISED_BY_CLASS)).isZero();
    }

    @Test
    void learnsNothingFromTwo() {
        assertThat(load(learnt(1, 2, 2), "guessed").idleAmps()).isEqualTo(1);
    }
}
