package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.BoardBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The replay must find what is wrong with a list, or it proves nothing. */
class ReplayTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(12).ratedAmps(30).reservedSlots(12))
            .boards(aBoard("B1"))
            .loads(
                    aLoad("dsp").processing().runningAmps(2),
                    aLoad("amp").amplifier().runningAmps(14).comesAfter("dsp"),
                    aLoad("sub").amplifier().runningAmps(12))
            .build();
    private final Plan built = plan(1, 3, 5);

    private static Plan plan(int dsp, int amp, int sub) {
        return aPlan().board("B1", 0, 1)
                .assignments(
                        anAssignment("dsp").at("P1", dsp).on("B1", 1),
                        anAssignment("amp").at("P1", amp).on("B1", 2),
                        anAssignment("sub").at("P1", sub).on("B1", 3))
                .build();
    }

    private static WorkStep lock(String load) {
        return WorkStep.load(WorkStepKind.LOCK_OUT, load);
    }

    private static WorkStep move(String load, int slot) {
        return WorkStep.breaker(WorkStepKind.RE_TERMINATE, load, "P1", slot);
    }

    private static WorkStep energise(String load) {
        return WorkStep.load(WorkStepKind.ENERGISE, load);
    }

    private List<Breach> replay(Plan target, WorkStep... steps) {
        return Replay.of(project, built, target, List.of(stage(target, List.of(steps))));
    }

    private static WorkStage stage(Plan target, List<WorkStep> steps) {
        return new WorkStage(false, List.of(), List.of(), List.of(), List.of(), List.of(), steps, target, 0);
    }

    private static void says(List<Breach> breaches, String... words) {
        assertThat(breaches).anySatisfy(breach -> assertThat(breach.message()).contains(words));
        assertThat(breaches)
                .allSatisfy(breach -> assertThat(breach.found().kind()).isNotEmpty());
    }

    @Test
    void findsNothingInASoundList() {
        assertThat(replay(plan(1, 3, 6), SOUND)).isEmpty();
    }

    /** The panel is dead while a breaker of it is worked on, so all that it feeds is off, last on first off. */
    private static final WorkStep[] SOUND = {
        WorkStep.load(WorkStepKind.SWITCH_OFF, "amp"),
        lock("sub"),
        WorkStep.load(WorkStepKind.SWITCH_OFF, "dsp"),
        WorkStep.panel(WorkStepKind.ISOLATE_PANEL, "P1"),
        move("sub", 6),
        WorkStep.system(WorkStepKind.MAKE_READY),
        WorkStep.panel(WorkStepKind.ENERGISE_PANEL, "P1"),
        WorkStep.load(WorkStepKind.SWITCH_ON, "dsp"),
        WorkStep.load(WorkStepKind.SWITCH_ON, "amp"),
        energise("sub"),
        WorkStep.load(WorkStepKind.FUNCTION_TEST, "sub"),
        WorkStep.system(WorkStepKind.RELABEL)
    };

    private List<Breach> without(WorkStepKind kind) {
        return replay(
                plan(1, 3, 6),
                Stream.of(SOUND).filter(step -> step.kind() != kind).toArray(WorkStep[]::new));
    }

    @Test
    void findsABreakerThatIsWorkedOnInALivePanel() {
        says(without(WorkStepKind.ISOLATE_PANEL), "breaker of load 'sub'", "panel 'P1', which is live");
    }

    @Test
    void findsAPanelThatIsIsolatedUnderLoad() {
        says(without(WorkStepKind.SWITCH_OFF), "'P1' is isolated while load 'amp' is on");
    }

    @Test
    void findsVoltageBeforeCoversAreOn() {
        says(without(WorkStepKind.MAKE_READY), "voltage comes back", "'sub'");
    }

    @Test
    void findsALoadThatComesOnInADeadPanel() {
        says(without(WorkStepKind.ENERGISE_PANEL), "'dsp'", "isolated");
        says(without(WorkStepKind.ENERGISE_PANEL), "'P1' is still isolated");
    }

    @Test
    void findsWhatIsNeitherTriedNorLabelled() {
        says(without(WorkStepKind.FUNCTION_TEST), "'sub' was moved and is not tried");
        says(without(WorkStepKind.RELABEL), "'sub' was moved and its labels are not");
    }

    @Test
    void findsALeadThatIsMovedOnALiveBoard() {
        says(
                replay(
                        plan(1, 3, 5),
                        lock("sub"),
                        WorkStep.lead("sub", Optional.of("B1"), OptionalInt.of(4)),
                        energise("sub")),
                "lead of load 'sub'",
                "board 'B1', which is live");
    }

    @Test
    void findsWorkOnALiveLoad() {
        says(replay(plan(1, 3, 6), move("sub", 6)), "'sub'", "without being off");
    }

    @Test
    void findsTwoBreakersInOneSlot() {
        says(replay(plan(1, 3, 3), lock("sub"), move("sub", 3), energise("sub")), "'sub'", "slot 3", "'amp'");
    }

    @Test
    void findsASlotThatTakesNoBreaker() {
        says(replay(plan(1, 3, 12), lock("sub"), move("sub", 12), energise("sub")), "slot 12", "takes no breaker");
    }

    @Test
    void findsALoadThatStaysOff() {
        says(replay(plan(1, 3, 6), lock("sub"), move("sub", 6)), "'sub'", "still off");
    }

    @Test
    void findsALoadThatComesOnWithItsLockOn() {
        says(replay(plan(1, 3, 5), lock("sub"), WorkStep.load(WorkStepKind.SWITCH_ON, "sub")), "'sub'", "locked out");
    }

    @Test
    void findsWhatIsOnWhileWhatItNeedsIsOff() {
        says(replay(plan(2, 3, 5), lock("dsp"), move("dsp", 2), energise("dsp")), "'amp'", "is on while", "'dsp'");
    }

    @Test
    void findsProcessingThatComesOnUnderLiveAmplifiers() {
        says(replay(plan(2, 3, 5), lock("dsp"), move("dsp", 2), energise("dsp")), "'dsp'", "later role");
    }

    /** Slot 4 is phase B like slot 3: 14 A + 12 A are more than 0.8 · 30 A = 24 A. */
    @Test
    void findsAConductorThatCarriesTooMuch() {
        says(replay(plan(1, 3, 4), lock("sub"), move("sub", 4), energise("sub")), "rating", "phase B");
    }

    @Test
    void findsAnOutputThatIsTaken() {
        says(
                replay(
                        plan(1, 3, 5),
                        lock("sub"),
                        WorkStep.lead("sub", Optional.of("B1"), OptionalInt.of(2)),
                        energise("sub")),
                "'sub'",
                "an output that load 'amp' has");
    }

    @Test
    void findsThatTheListDoesNotLeadWhereItShould() {
        says(replay(plan(1, 4, 6), lock("sub"), move("sub", 6), energise("sub")), "'amp'", "not where");
    }

    /**
     * Boards have 2 outputs, so the group "B1" of 3 loads is larger than any and may be split; the board B1 has its name.
     * The group "pair" fits one board and is on two while its second load waits on board B1.
     */
    @Test
    void findsASplitGroupThoughALargeGroupHasTheNameOfTheBoard() {
        Project small = aProject()
                .panels(aPanel("P1").slots(12).ratedAmps(100))
                .boardTypes(aBoardType("two").outputs(2))
                .boards(board("B1"), board("B2"), board("B3"), board("B4"))
                .groups(aGroup("B1"), aGroup("pair"))
                .loads(
                        aLoad("left").group("pair"),
                        aLoad("right").group("pair"),
                        aLoad("one").group("B1"),
                        aLoad("two").group("B1"),
                        aLoad("three").group("B1"))
                .build();
        Plan before = onBoards("B1");
        Plan after = onBoards("B2");
        List<WorkStep> steps = List.of(
                lock("left"),
                WorkStep.lead("left", Optional.of("B2"), OptionalInt.of(1)),
                WorkStep.system(WorkStepKind.MAKE_READY),
                energise("left"),
                WorkStep.load(WorkStepKind.FUNCTION_TEST, "left"),
                lock("right"),
                WorkStep.lead("right", Optional.of("B2"), OptionalInt.of(2)),
                WorkStep.system(WorkStepKind.MAKE_READY),
                energise("right"));

        List<Breach> breaches = Replay.of(small, before, after, List.of(stage(after, steps)));

        assertThat(breaches)
                .filteredOn(breach -> breach.step() == 4)
                .extracting(Breach::message)
                .containsExactly(
                        "group-whole: shutdown group 'pair' (2 loads) is split over boards 'B1', 'B2'; a group of up"
                                + " to 2 loads, the outputs of the largest board, must sit on one. Maybe move all of it to"
                                + " a board with enough outputs.");
    }

    private static BoardBuilder board(String id) {
        return aBoard(id).type("two").with(it -> it.outputVolts(24));
    }

    private static Plan onBoards(String pair) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .board("B3", 0, 1)
                .board("B4", 0, 1)
                .assignments(
                        anAssignment("left").at("P1", 1).on(pair, 1),
                        anAssignment("right").at("P1", 2).on(pair, 2),
                        anAssignment("one").at("P1", 3).on("B3", 1),
                        anAssignment("two").at("P1", 4).on("B3", 2),
                        anAssignment("three").at("P1", 5).on("B4", 1))
                .build();
    }

    @Test
    void saysWhatItFoundInParts() {
        Breach first = replay(plan(1, 3, 3), lock("sub"), move("sub", 3), energise("sub")).stream()
                .filter(breach -> breach.found().kind().equals("taken-slot"))
                .findFirst()
                .orElseThrow();

        assertThat(first.message())
                .isEqualTo("load 'sub' goes to slot 3 of panel 'P1', where the breaker of load 'amp' is.");
        assertThat(first.found().rule()).isEqualTo("work");
        assertThat(first.found().subjects())
                .containsExactly(
                        new Subject(SubjectKind.LOAD, "sub"),
                        new Subject(SubjectKind.PANEL, "P1"),
                        new Subject(SubjectKind.LOAD, "amp"));
    }

    /** The rule itself is told, with its figure: 14 A + 12 A on phase B, allowed are 0.8 · 30 A = 24 A. */
    @Test
    void handsOnTheBrokenRule() {
        assertThat(replay(plan(1, 3, 4), lock("sub"), move("sub", 4), energise("sub")))
                .extracting(Breach::found)
                .anySatisfy(found -> {
                    assertThat(found.rule()).isEqualTo("rating");
                    assertThat(found.figure()).hasValue(26);
                    assertThat(found.limit()).hasValue(24);
                });
    }
}
