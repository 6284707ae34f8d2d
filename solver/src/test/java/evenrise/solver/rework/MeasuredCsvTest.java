package evenrise.solver.rework;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuredCsvTest {
    private final Project project = aProject()
            .panels(aPanel("P1"))
            .loads(
                    aLoad("amp-1").unswitched().runningAmps(8).idleAmps(2).inrushPeakAmps(50),
                    aLoad("fan").unswitched().runningAmps(3).name("Fan, plant room"),
                    aLoad("hoist").unswitched().threePole().runningAmps(5))
            .build();
    private final Plan built = aPlan().assignments(
                    anAssignment("amp-1").at("P1", 1, Phase.A),
                    anAssignment("fan").at("P1", 3, Phase.B),
                    anAssignment("hoist").at("P1", 2, Phase.A, Phase.B, Phase.C))
            .build();

    private Measured read(String text) {
        return MeasuredCsv.read(text, project, built);
    }

    private Load measured(String text, String load) {
        Measured measured = read(text);
        assertThat(measured.problems()).isEmpty();
        return measured.in(project).loads().stream()
                .filter(each -> each.id().equals(load))
                .findFirst()
                .orElseThrow();
    }

    @Nested
    class AReading {
        @Test
        void countsInsteadOfTheProjectsOwn() {
            Load load = measured("load,phase,running_a,idle_a\namp-1,A,9.5,2.5\n", "amp-1");

            assertThat(load.runningAmps()).isEqualTo(9.5);
            assertThat(load.idleAmps()).isEqualTo(2.5);
            assertThat(load.inrushAmps()).isEqualTo(50);
        }

        @Test
        void leavesTheIdleCurrentWhereItSaysNothingOfIt() {
            assertThat(measured("load,phase,running_a\namp-1,A,9.5\n", "amp-1").idleAmps())
                    .isEqualTo(2);
        }

        @Test
        void takesTheIdleCurrentAlongWhereTheLoadHasNoOtherAndNoInrush() {
            Load fan = measured("load,phase,running_a\nfan,B,4\n", "fan");

            assertThat(fan.idleAmps()).isEqualTo(4);
            assertThat(fan.inrushAmps()).isEqualTo(Math.sqrt(2) * 4); // none beyond the crest, by definition
            assertThat(fan.inrushPeakAmps()).isEmpty();
        }

        @Test
        void ofSeveralPhasesOrRowsIsTheGreatest() {
            Measured measured =
                    read("load,phase,running_a\nhoist,A,5.1\nhoist,B,5.6\nhoist,C,5.2\namp-1,A,7\namp-1,A,7.5\n");

            assertThat(measured.currents().get("hoist").runningAmps()).isEqualTo(OptionalDouble.of(5.6));
            assertThat(measured.currents().get("amp-1").runningAmps()).isEqualTo(OptionalDouble.of(7.5));
            assertThat(measured.notes()).singleElement().asString().contains("line 6", "amp-1", "greater");
        }

        @Test
        void ofFewerPhasesThanTheLoadHasIsSaid() {
            assertThat(read("load,phase,running_a\nhoist,A,5.1\n").notes())
                    .singleElement()
                    .asString()
                    .contains("hoist", "1 of its 3 phases");
        }
    }

    @Nested
    class AnAmount {
        private OptionalDouble running(String text) {
            Measured measured = read(text);
            assertThat(measured.problems()).isEmpty();
            return measured.currents().get("fan").runningAmps();
        }

        /** 2900 mA are 2.9 A. */
        @Test
        void mayBeInAnotherUnitThatItsHeaderOrItsCellSays() {
            assertThat(running("load,current (mA)\nfan,2900\n")).hasValue(2.9);
            assertThat(running("load,current\nfan,2900 mA\n")).hasValue(2.9);
            assertThat(running("load,running (rms)\nfan,2.9\n")).hasValue(2.9);
        }

        /** A load takes no thousand amperes because a program parts thousands. */
        @Test
        void withALoneMarkBeforeThreeDigitsIsAFractionWhereNothingElseIsMeant() {
            assertThat(running("load,current\nfan,2.912\n")).hasValue(2.912);
            assertThat(running("load;current\nfan;2,912\n")).hasValue(2.912);
        }

        @Test
        void thatCanBeReadInTwoWaysIsAskedFor() {
            assertThat(read("load,current\nfan,\"2,912\"\n").problems())
                    .singleElement()
                    .asString()
                    .contains("'2,912'", "12.4");
            assertThat(read("load;current\nfan;2,9\namp-1;7.912\n").problems())
                    .singleElement()
                    .asString()
                    .contains("'7.912'");
        }

        @Test
        void inAnotherQuantityIsNone() {
            assertThat(read("load,running (W)\nfan,300\n").problems()).isNotEmpty();
        }
    }

    @Test
    void aMisspeltLoadIsGuessed() {
        assertThat(read("load,amps\nhiost,5\n").problems())
                .singleElement()
                .asString()
                .contains("Maybe it is 'hoist'");
    }

    @Test
    void skipsTheCautionsOfOurOwnTables() {
        String text =
                "load,phase,amps\namp-1,A,8.1\n" + String.join("\n", Cautions.comments()) + "\n\"# Caution: x\",,\n";

        assertThat(read(text).problems()).isEmpty();
        assertThat(read(text).currents()).hasSize(1);
    }

    @Nested
    class AnOddReading {
        /** Breakers of 20 A: 27.5 A is no current that one carries. */
        @Test
        void overItsBreakerIsWarnedOf() {
            assertThat(read("load,phase,running_a\namp-1,A,27.5\n").notes())
                    .anySatisfy(note -> assertThat(note).contains("line 2", "27.5 A on a breaker of 20.0 A"));
        }

        /** A logger's second-by-second rows: off, the inrush, then what it runs at. */
        @Test
        void thatIsRatherAnInrushIsWarnedOf() {
            Measured measured = read("load,phase,amps\namp-1,A,0\namp-1,A,18.2\namp-1,A,6.9\namp-1,A,6.7\n");

            assertThat(measured.notes())
                    .anySatisfy(note -> assertThat(note)
                            .contains("line 3", "18.2 A", "8.0 A of the project", "Maybe it is the inrush"));
            assertThat(measured.currents().get("amp-1").runningAmps()).hasValue(18.2);
        }

        @Test
        void belowFullUseIsWarnedOfOnce() {
            assertThat(read("load,phase,amps\namp-1,A,5.6\nfan,B,2\n").notes())
                    .singleElement()
                    .asString()
                    .contains("2 loads read", "'amp-1'", "full design use");
        }

        @Test
        void nearWhatIsDesignedIsNot() {
            assertThat(read("load,phase,amps\namp-1,A,8.2\nfan,B,2.9\n").notes())
                    .isEmpty();
        }
    }

    @Nested
    class ATable {
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "Load;Phase;Running (A);Idle (A)\namp-1;L1;9,5;2,5",
                    "\ufeffid\tline\tcurrent_a\tstandby_a\namp-1\t1\t9.5 A\t2.5\n",
                    "remark,idle_a,running_a,circuit\r\n\"hot, noisy\",2.5,9.5,amp-1\r\n\r\n",
                    "breaker,amps,idle,phase\namp-1,9.5,2.5,a\n"
                })
        void mayBeSpelledInManyWays(String text) {
            Load load = measured(text, "amp-1");

            assertThat(load.runningAmps()).isEqualTo(9.5);
            assertThat(load.idleAmps()).isEqualTo(2.5);
        }

        @Test
        void hasEveryBadRowReportedWithItsLineAndACure() {
            Measured measured = read("""
                load,phase,running_a,idle_a
                AMP1,A,9,2
                amp-1,D,9,2
                amp-1,B,9,2
                amp-1,A,nine,2

                amp-1,A,-9,2
                amp-1,A,,
                amp-1,A,2,9
                fan,B,1e99,1\
                """);

            assertThat(measured.problems()).hasSize(8);
            assertThat(measured.problems().get(0)).contains("line 2", "'AMP1'", "Maybe it is 'amp-1'");
            assertThat(measured.problems().get(1)).contains("line 3", "phase 'D'", "A, B, C");
            assertThat(measured.problems().get(2)).contains("line 4", "not on phase B but on A");
            assertThat(measured.problems().get(3)).contains("line 5", "'nine'", "expected a number");
            assertThat(measured.problems().get(4)).contains("line 7", "-9", "0 to 6300 A");
            assertThat(measured.problems().get(5)).contains("line 8", "no reading");
            assertThat(measured.problems().get(6)).contains("line 9", "exchanged");
            assertThat(measured.problems().get(7)).contains("line 10", "milliampere");
            assertThat(measured.currents()).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "",
                    "\n\n",
                    "load,phase\namp-1,A\n",
                    "phase,running_a\nA,9\n",
                    "load,load_id,amps\namp-1,amp-1,9\n",
                    "load,amps\n",
                    "load,amps\n\"amp-1,9\n"
                })
        void thatIsNoneIsReported(String text) {
            assertThat(read(text).problems()).isNotEmpty();
        }
    }
}
