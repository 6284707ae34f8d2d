package evenrise.model.event;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Behaviour;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * On one phase: lights of 10 A at 0 s that hold; a winch at 1 s that drops, peaks at 120 A and runs at 15 A; a fan that is
 * not switched, peaks at 70 A and runs at 5 A. All idle as they run, but for the winch, which idles at 0 A.
 */
class MotorsTest {
    private static final double ROOT_TWO = Math.sqrt(2);

    private Behaviour behaviour = Behaviour.DEFAULT;
    private double limitAmps = 150;

    private Layout layout() {
        Equipment motor = Equipment.builder().motor(Motor.builder().build()).build();
        Project project = aProject()
                .supply(aSupply().singlePhase().ratedAmps(400).inrushLimitAmps(limitAmps))
                .panels(aPanel("P").slots(12).ratedAmps(400))
                .boardTypes(aBoardType().startDelaySeconds(0, 1).stepSeconds(1))
                .boards(aBoard("H").in("P"), aBoard("D").in("P"))
                .groups(aGroup("stage").drops())
                .behaviour(behaviour)
                .loads(
                        aLoad("lights").auxiliary().runningAmps(10),
                        aLoad("winch")
                                .auxiliary()
                                .group("stage")
                                .runningAmps(15)
                                .idleAmps(0)
                                .inrushPeakAmps(120)
                                .equipment(motor),
                        aLoad("fan")
                                .unswitched()
                                .runningAmps(5)
                                .inrushPeakAmps(70)
                                .equipment(motor))
                .build();
        return Layout.of(
                project,
                PlanFinisher.timed(
                        project,
                        aPlan().board("H", 0, 1)
                                .board("D", 1, 1)
                                .assignments(
                                        anAssignment("lights").at("P", 1).on("H", 1),
                                        anAssignment("winch").at("P", 2).on("D", 1),
                                        anAssignment("fan").at("P", 3))
                                .build()));
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private static ScriptEvent mains(double seconds, double percent) {
        return at(seconds, Happening.MAINS).voltage(percent, List.of());
    }

    private Trace play(ScriptEvent... events) {
        return BothWays.of(layout(), Use.FULL, new EventScript("test", List.of(events)));
    }

    private Trace brownout() {
        return play(at(0, Happening.SYSTEM_ON), mains(100, 0), mains(200, 100));
    }

    private Trace release() {
        return play(at(0, Happening.SYSTEM_ON), at(100, Happening.EMERGENCY), at(200, Happening.RELEASE));
    }

    private double figure(PlanEvent event) {
        return layout().eventPeaks().get(0).stream()
                .filter(each -> each.event() == event)
                .findFirst()
                .orElseThrow()
                .peakInrushAmps();
    }

    private static double bound(Trace trace, int episode) {
        return trace.episodes().get(episode).peaks().get(0).boundAmps();
    }

    private static List<String> texts(Trace trace, EventFinding.Grade grade) {
        return trace.findings().stream()
                .filter(each -> each.grade() == grade)
                .map(EventFinding::text)
                .toList();
    }

    @Nested
    class OfWhichNothingIsStated {
        @Test
        void stayOffAfterTheMains() {
            assertThat(brownout().onAtEnd()).containsExactly("lights");
            assertThat(texts(brownout(), EventFinding.Grade.NOTE))
                    .anyMatch(it -> it.startsWith("2 motors (winch, fan) stay off until somebody asks for them"));
        }

        @Test
        void stayOffAfterARelease() {
            assertThat(release().onAtEnd()).containsExactly("lights");
        }

        @Test
        void comeOnWhenSomebodyAsks() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(100, Happening.EMERGENCY),
                    at(200, Happening.RELEASE),
                    at(300, Happening.GROUP_ON).withGroup("stage"));

            assertThat(trace.onAtEnd()).containsExactly("lights", "winch");
        }

        @Test
        void countBothWaysAfterTheMains() {
            // they return: the winch's 120 onto lights and fan, √2·10 + √2·5 = 21.213
            assertThat(bound(brownout(), 4)).isCloseTo(141.213, within(1e-3));
            // the fan's own inrush at the return: 70
            assertThat(bound(brownout(), 3)).isCloseTo(70, within(1e-3));
            assertThat(figure(PlanEvent.RETURN)).isCloseTo(141.213, within(1e-3));
            assertThat(texts(brownout(), EventFinding.Grade.NOTE))
                    .anyMatch(it -> it.contains("141.2 A after") && it.contains("21.2 A if they stay off"));
        }

        @Test
        void countBothWaysAfterARelease() {
            assertThat(bound(release(), 2)).isCloseTo(141.213, within(1e-3));
            assertThat(figure(PlanEvent.RELEASE)).isCloseTo(141.213, within(1e-3));
        }

        @Test
        void breakALimitThatHoldsOnlyIfTheyStayOff() {
            limitAmps = 140;

            assertThat(texts(release(), EventFinding.Grade.BROKEN))
                    .anyMatch(it -> it.startsWith("with motors that come back by themselves, the supply may peak at"));
        }
    }

    @Nested
    class ThatAreStatedToStayOff {
        @Test
        void countForNothingAfterARelease() {
            behaviour = Behaviour.builder().motorsResume(Resume.STAY_OFF).build();

            // lights and fan in use
            assertThat(figure(PlanEvent.RELEASE)).isCloseTo(15 * ROOT_TWO, within(1e-9));
            assertThat(bound(release(), 2)).isCloseTo(15 * ROOT_TWO, within(1e-9));
        }

        @Test
        void drawNoInrushWhenTheMainsReturn() {
            behaviour = Behaviour.builder().motorsResume(Resume.STAY_OFF).build();

            // the fan as if it had been started again, √2·5; the sequence is the plan's, somebody may ask for all of it
            assertThat(bound(brownout(), 3)).isCloseTo(5 * ROOT_TWO, within(1e-9));
            assertThat(bound(brownout(), 4)).isCloseTo(15 * ROOT_TWO, within(1e-9));
            assertThat(figure(PlanEvent.RETURN)).isCloseTo(141.213, within(1e-3));
        }

        @Test
        void stillDrawItAfterADeepDip() {
            behaviour = Behaviour.builder().motorsResume(Resume.STAY_OFF).build();

            // √2·10 + (√2·15 + 120) + (√2·5 + 70 − √2·5): no starter is sure to have dropped out
            assertThat(figure(PlanEvent.DIP)).isCloseTo(225.355, within(1e-3));
        }
    }

    @Nested
    class ThatAreStatedToComeBack {
        @Test
        void doSoInTheSequence() {
            behaviour = Behaviour.builder().motorsResume(Resume.SEQUENCE).build();

            assertThat(brownout().onAtEnd()).containsExactly("lights", "winch");
            assertThat(release().onAtEnd()).containsExactly("lights", "winch");
            assertThat(texts(release(), EventFinding.Grade.NOTE))
                    .anyMatch(it -> it.endsWith("comes back in the sequence without that anybody asks"));
        }
    }
}
