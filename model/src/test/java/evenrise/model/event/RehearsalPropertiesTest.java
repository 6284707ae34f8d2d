package evenrise.model.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.TestBehaviour;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.EventPeak;
import evenrise.model.plan.Plan;
import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Restart;
import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** What holds for every project, plan, behaviour and script. A script that breaks one is shrunk and written down. */
@Tag("slow")
class RehearsalPropertiesTest {
    private static final String SEED = "20011";
    private static final int PROJECTS = 400;
    /** Where the plan alone cannot keep it: it depends on what happens. */
    private static final Set<String> OF_LIMITS = Set.of("inrush-limit");

    @Provide
    Arbitrary<List<RawEvent>> events() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 44),
                        Arbitraries.integers().between(0, 8),
                        Arbitraries.integers().between(0, 60),
                        Arbitraries.integers().between(0, 20))
                .as(RawEvent::new)
                .list()
                .ofMaxSize(14);
    }

    private static Layout layout(int seed, boolean usual) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Behaviour behaviour = usual ? Behaviour.DEFAULT : TestBehaviour.any(new Random(seed));
        return Layout.of(described(planted.project(), seed).withBehaviour(Optional.of(behaviour)), planted.plan());
    }

    /** The same with some loads that are motors, and some amplifiers that state the groups whose processing they need. */
    private static Project described(Project project, int seed) {
        Random random = new Random(seed);
        Equipment motor = Equipment.builder().motor(Motor.builder().build()).build();
        List<String> groups = project.loads().stream()
                .filter(each -> each.switched() && each.role() == Role.PROCESSING)
                .flatMap(each -> each.shutdownGroup().stream())
                .distinct()
                .toList();
        return project.withLoads(project.loads().stream()
                .map(load -> {
                    Load described = random.nextInt(6) == 0
                            ? load.with().equipment(motor).build()
                            : load;
                    boolean states = random.nextBoolean() && load.switched() && load.role() != Role.PROCESSING;
                    List<String> needed = groups.stream()
                            .filter(each -> random.nextInt(3) == 0)
                            .toList();
                    return states ? described.with().needsGroups(needed).build() : described;
                })
                .toList());
    }

    private static Layout layout(int seed, Restart restart) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        return Layout.of(
                described(planted.project(), seed).withBehaviour(Optional.of(TestBehaviour.restarting(restart))),
                planted.plan());
    }

    /** Amplifiers, dropped groups, the sequence: by a witness who sees breakers only. */
    @Property(tries = 3000, seed = SEED)
    void withoutFaultsNothingHappensThatMustNot(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll("events") List<RawEvent> raw) {
        Layout layout = layout(seed, usual);
        EventScript script = RawEvent.script(raw, layout.project(), false);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        assertThat(new Eyewitness(layout).accuse(trace))
                .as(RawEvent.text(script))
                .isEmpty();
        assertThat(trace.findings())
                .as(RawEvent.text(script))
                .noneMatch(each -> each.grade() == EventFinding.Grade.BROKEN && !OF_LIMITS.contains(each.rule()));
    }

    @Property(tries = 2000, seed = SEED)
    void everyScriptEndsInADefinedState(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll("events") List<RawEvent> raw) {
        Layout layout = layout(seed, usual);
        EventScript script = RawEvent.script(raw, layout.project(), false);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        long switched = layout.placements().stream()
                .filter(each -> each.onSeconds().isPresent())
                .count();
        switch (trace.shown()) {
            case DOWN -> assertThat(trace.onAtEnd()).as(RawEvent.text(script)).isEmpty();
            case UP -> assertThat(trace.onAtEnd()).as(RawEvent.text(script)).hasSize((int) switched);
            case PARTLY_UP ->
                assertThat(trace.onAtEnd().size()).as(RawEvent.text(script)).isLessThan((int) switched);
            default -> assertThat(trace.shown()).as(RawEvent.text(script)).isIn(Display.EMERGENCY, Display.SUPPLY_LOW);
        }
    }

    /** With faults, too, and with breakers that close early and late within the tolerance. */
    @Property(tries = 2000, seed = SEED)
    void noCurrentIsEverAboveItsBound(
            @ForAll @IntRange(max = PROJECTS) int seed,
            @ForAll boolean usual,
            @ForAll Use use,
            @ForAll("events") List<RawEvent> raw) {
        Layout layout = layout(seed, usual);
        EventScript script = RawEvent.script(raw, layout.project(), true);
        double tolerance = layout.project().timingToleranceSeconds();
        Random random = new Random(seed);

        Trace trace = Rehearsal.of(
                ConnectedLoads.of(layout, use), script, (load, closing) -> tolerance * (2 * random.nextDouble() - 1));

        assertThat(trace.findings())
                .as(RawEvent.text(script))
                .noneMatch(each -> each.rule().equals("bound"));
        assertThat(trace.readings())
                .as(RawEvent.text(script))
                .allSatisfy(each -> assertThat(each.drawnAmps()).isLessThanOrEqualTo(each.boundAmps() + 1e-6));
    }

    /** Each reading of a panel, load by load from the steps, as long as the mains are on. */
    @Property(tries = 400, seed = SEED)
    void currentsAreTheSumOfWhatEachLoadDraws(
            @ForAll @IntRange(max = PROJECTS) int seed,
            @ForAll boolean usual,
            @ForAll Use use,
            @ForAll("events") List<RawEvent> raw) {
        Layout layout = layout(seed, usual);
        EventScript drawn = RawEvent.script(raw, layout.project(), true);
        EventScript script = new EventScript(
                "drawn",
                drawn.events().stream()
                        .filter(each -> each.event() != Happening.MAINS)
                        .toList());
        double tolerance = layout.project().timingToleranceSeconds();
        Random random = new Random(seed);

        Trace trace = Rehearsal.of(
                ConnectedLoads.of(layout, use), script, (load, closing) -> tolerance * (2 * random.nextDouble() - 1));

        for (PhaseReading reading : trace.readings()) {
            double sum = 0;
            for (Placement each : layout.placements()) {
                boolean isThere = each.phases().contains(reading.phase())
                        && (reading.node().equals(NodeFigures.SUPPLY)
                                || reading.node().equals(each.assignment().panel()));
                sum += isThere ? amps(trace, each, reading.atSeconds()) : 0;
            }
            assertThat(reading.drawnAmps())
                    .as("%s%s", reading, RawEvent.text(script))
                    .isCloseTo(sum, within(1e-6));
        }
    }

    private static double amps(Trace trace, Placement placement, double atSeconds) {
        double idle = Math.sqrt(2) * placement.load().idleAmps();
        double excess = Math.max(0, placement.load().inrushAmps() - idle);
        double closed = placement.load().switched() ? Double.NaN : Double.NEGATIVE_INFINITY;
        for (TraceEntry step : trace.steps()) {
            if (step.atSeconds() <= atSeconds && step.load().equals(Optional.of(placement.id()))) {
                closed = step.kind() == EntryKind.CLOSES
                        ? step.atSeconds()
                        : step.kind() == EntryKind.OPENS ? Double.NaN : closed;
            }
        }
        double since = closed;
        boolean isInUse = trace.episodes().stream()
                .anyMatch(each -> each.inUse() && each.fromSeconds() > since && each.fromSeconds() <= atSeconds);
        double running = Math.sqrt(2) * placement.load().runningAmps();
        double base = isInUse ? Math.max(idle, running) : idle;
        double halfSeconds = placement.load().inrushHalfMillis() / 1000;
        return Double.isNaN(closed) ? 0 : base + excess * Math.pow(2, -(atSeconds - closed) / halfSeconds);
    }

    /** What the witness sees that must not be, the rehearsal has said itself. */
    @Property(tries = 2000, seed = SEED)
    void withFaultsWhatMustNotBeIsSaid(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll("events") List<RawEvent> raw) {
        Layout layout = layout(seed, usual);
        EventScript script = RawEvent.script(raw, layout.project(), true);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        assertThat(new Eyewitness(layout).accuse(trace))
                .as(RawEvent.text(script))
                .noneMatch(each -> each.contains("was closed") || each.contains("was not closed"));
        boolean seen = new Eyewitness(layout)
                .accuse(trace).stream()
                        .anyMatch(each -> each.contains("on without") || each.contains("is on during an emergency"));
        boolean said = trace.findings().stream()
                .anyMatch(
                        each -> Set.of("processing-first", "order", "emergency").contains(each.rule()));
        assertThat(said || !seen).as(RawEvent.text(script)).isTrue();
    }

    /** Where what needs a dead board's loads is to stop, nothing comes on without what it needs. */
    @Property(tries = 1000, seed = SEED)
    void nothingComesOnBehindADeadBoardWhereTheProjectSaysSo(
            @ForAll @IntRange(max = PROJECTS) int seed,
            @ForAll @IntRange(max = 20) int board,
            @ForAll("events") List<RawEvent> raw) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Layout layout = Layout.of(
                described(planted.project(), seed).withBehaviour(Optional.of(TestBehaviour.stopping())),
                planted.plan());
        List<ScriptEvent> events = new ArrayList<>();
        if (!layout.project().boards().isEmpty()) {
            int dead = board % layout.project().boards().size();
            events.add(at(0, Happening.BOARD_DEAD)
                    .withBoard(layout.project().boards().get(dead).id()));
        }
        events.addAll(RawEvent.script(raw, layout.project(), false).events());
        EventScript script = new EventScript("drawn", events);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        assertThat(new Eyewitness(layout).accuse(trace))
                .as(RawEvent.text(script))
                .noneMatch(each -> each.contains("comes on without"));
    }

    @Property(tries = 300, seed = SEED)
    void theSameScriptGivesTheSameTrace(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll("events") List<RawEvent> raw) {
        ConnectedLoads connected = ConnectedLoads.of(layout(seed, usual));
        EventScript script = RawEvent.script(raw, connected.layout.project(), true);

        assertThat(Rehearsal.of(connected, script)).isEqualTo(Rehearsal.of(connected, script));
    }

    /** A plan may be broken in any way: loads missing, outputs taken twice, panels and boards that do not exist. */
    @Property(tries = 500, seed = SEED)
    void aBrokenPlanIsPlayedAllTheSame(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll("events") List<RawEvent> raw) {
        Layout sound = layout(seed, usual);
        Random random = new Random(seed);
        List<Assignment> assignments = new ArrayList<>();
        for (Assignment each : sound.plan().assignments()) {
            if (random.nextInt(6) > 0) {
                assignments.add(each.with()
                        .panel(random.nextInt(8) == 0 ? "nowhere" : each.panel())
                        .slot(random.nextInt(8) == 0 ? random.nextInt(200) - 50 : each.slot())
                        .board(random.nextInt(8) == 0 ? Optional.of("none") : each.board())
                        .output(random.nextInt(8) == 0 ? OptionalInt.of(random.nextInt(12) - 2) : each.output())
                        .build());
            }
        }
        Plan broken = Plan.builder()
                .boards(sound.plan().boards())
                .assignments(assignments)
                .build();
        Layout layout = Layout.of(sound.project(), broken);
        EventScript script = RawEvent.script(raw, sound.project(), true);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        assertThat(trace.findings())
                .as(RawEvent.text(script))
                .noneMatch(each -> each.rule().equals("bound"));
        assertThat(layout.eventPeaks()).hasSameSizeAs(layout.nodes());
    }

    // ---- the figures that follow from the plan alone

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    /** So late that every inrush of a random project has died away. */
    private static final double REST = 10_000;

    private static Trace day(Layout layout, ScriptEvent... events) {
        return day(layout, Use.FULL, events);
    }

    private static Trace day(Layout layout, Use use, ScriptEvent... events) {
        return BothWays.of(layout, use, new EventScript("day", List.of(events)));
    }

    private static double normal(NodeFigures node) {
        return node.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
    }

    private static Optional<EventPeak> stated(Layout layout, int node, PlanEvent event) {
        return layout.eventPeaks().get(node).stream()
                .filter(each -> each.event() == event)
                .findFirst();
    }

    @Property(tries = 300, seed = SEED)
    void switchingOnPeaksAtTheFigureOfThePlan(@ForAll @IntRange(max = PROJECTS) int seed) {
        Layout layout = layout(seed, true);

        Trace trace = day(layout, Use.IDLE, at(0, Happening.SYSTEM_ON));

        for (int node = 0; node < layout.nodes().size(); node++) {
            assertThat(trace.episodes().get(0).peaks().get(node).boundAmps())
                    .isCloseTo(normal(layout.nodes().get(node)), within(1e-6));
        }
    }

    /** On and off at any time, however often, as long as the show does not run. */
    @Property(tries = 1000, seed = SEED)
    void turningHalfWayPeaksNoHigherThanSwitchingOn(
            @ForAll @IntRange(max = PROJECTS) int seed,
            @ForAll boolean usual,
            @ForAll @Size(max = 8) List<@IntRange(min = 0, max = 200) Integer> tenths) {
        Layout layout = layout(seed, usual);
        List<ScriptEvent> events = new ArrayList<>(List.of(at(0, Happening.SYSTEM_ON)));
        double now = 0;
        for (int each : tenths) {
            now += each / 10.0;
            events.add(at(now, events.size() % 2 == 1 ? Happening.SYSTEM_OFF : Happening.SYSTEM_ON));
        }

        Trace trace = day(layout, Use.IDLE, events.toArray(ScriptEvent[]::new));

        for (int node = 0; node < layout.nodes().size(); node++) {
            assertThat(highest(trace, node, 0))
                    .as(RawEvent.text(new EventScript("turns", events)))
                    .isLessThanOrEqualTo(normal(layout.nodes().get(node)) + 1e-6);
        }
    }

    @Property(tries = 300, seed = SEED)
    void aReleasePeaksAtTheFigureOfThePlan(@ForAll @IntRange(max = PROJECTS) int seed, @ForAll Restart restart) {
        Layout layout = layout(seed, restart);

        Trace trace =
                day(layout, at(0, Happening.SYSTEM_ON), at(REST, Happening.EMERGENCY), at(2 * REST, Happening.RELEASE));

        for (int node = 0; node < layout.nodes().size(); node++) {
            double peak = trace.episodes().get(2).peaks().get(node).boundAmps();
            stated(layout, node, PlanEvent.RELEASE)
                    .ifPresent(figure -> assertThat(peak).isCloseTo(figure.peakInrushAmps(), within(1e-6)));
        }
    }

    /** Of the return itself and of the sequence after it; the figure counts what is left of the inrush throughout. */
    @Property(tries = 300, seed = SEED)
    void aReturnOfTheMainsPeaksNoHigherThanTheFigureOfThePlan(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual) {
        Layout layout = layout(seed, usual);

        Trace trace = day(
                layout,
                at(0, Happening.SYSTEM_ON),
                at(REST, Happening.MAINS).voltage(0, List.of()),
                at(2 * REST, Happening.MAINS).voltage(100, List.of()));

        for (int node = 0; node < layout.nodes().size(); node++) {
            double peak = trace.episodes().get(3).peaks().get(node).boundAmps();
            if (trace.episodes().size() > 4) {
                peak = Math.max(peak, trace.episodes().get(4).peaks().get(node).boundAmps());
            }
            double figure = stated(layout, node, PlanEvent.RETURN).orElseThrow().peakInrushAmps();
            assertThat(peak).isLessThanOrEqualTo(figure + 1e-6);
            boolean isTight = layout.project().loads().stream().allMatch(each -> each.inrushHalfMillis() < 100);
            if (isTight && usual) {
                assertThat(peak).isCloseTo(figure, within(1e-6));
            }
        }
    }

    @Property(tries = 300, seed = SEED)
    void aDipThatIsRiddenThroughPeaksAtTheFigureOfThePlan(@ForAll @IntRange(max = PROJECTS) int seed) {
        Layout layout = layout(seed, true);

        Trace trace = day(
                layout,
                at(0, Happening.SYSTEM_ON),
                at(REST, Happening.MAINS).voltage(0, List.of()),
                at(REST + 1, Happening.MAINS).voltage(100, List.of()));

        for (int node = 0; node < layout.nodes().size(); node++) {
            assertThat(trace.episodes().get(2).peaks().get(node).boundAmps())
                    .isCloseTo(stated(layout, node, PlanEvent.DIP).orElseThrow().peakInrushAmps(), within(1e-6));
        }
    }

    /** With the show running or not. */
    @Property(tries = 300, seed = SEED)
    void noEventPeaksAboveItsFigureInEitherState(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll boolean usual, @ForAll Use use) {
        Layout layout = layout(seed, usual);

        Trace released = day(
                layout,
                use,
                at(0, Happening.SYSTEM_ON),
                at(REST, Happening.EMERGENCY),
                at(2 * REST, Happening.RELEASE));
        Trace returned = day(
                layout,
                use,
                at(0, Happening.SYSTEM_ON),
                at(REST, Happening.MAINS).voltage(0, List.of()),
                at(2 * REST, Happening.MAINS).voltage(100, List.of()));
        double hold = layout.project().behaviourOrDefault().brownoutHoldSeconds();
        Trace dipped = day(
                layout,
                use,
                at(0, Happening.SYSTEM_ON),
                at(REST, Happening.MAINS).voltage(0, List.of()),
                at(REST + hold / 2, Happening.MAINS).voltage(100, List.of()));

        for (int node = 0; node < layout.nodes().size(); node++) {
            isWithin(stated(layout, node, PlanEvent.RELEASE), highest(released, node, 2 * REST));
            isWithin(stated(layout, node, PlanEvent.RETURN), highest(returned, node, 2 * REST));
            if (hold > 0) {
                isWithin(stated(layout, node, PlanEvent.DIP), highest(dipped, node, REST));
            }
        }
    }

    private static void isWithin(Optional<EventPeak> figure, double peakAmps) {
        figure.ifPresent(it -> assertThat(peakAmps).isLessThanOrEqualTo(it.peakInrushAmps() + 1e-6));
    }

    /** Dead through a brownout, and mended while the rest is on. */
    @Property(tries = 200, seed = SEED)
    void theFailureOfAnyBoardPeaksNoHigherThanTheFigureOfThePlan(
            @ForAll @IntRange(max = PROJECTS) int seed, @ForAll DeadContacts contacts, @ForAll boolean usual) {
        Layout layout = layout(seed, usual);
        Project project = layout.project();
        project.boards().forEach(board -> {
            Trace brownout = day(
                    layout,
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.BOARD_DEAD).withBoard(board.id()),
                    at(2 * REST, Happening.MAINS).voltage(0, List.of()),
                    at(3 * REST, Happening.MAINS).voltage(100, List.of()));
            Trace mended = day(
                    layout,
                    at(0, Happening.BOARD_DEAD).withBoard(board.id()),
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.BOARD_BACK).withBoard(board.id()));
            for (int node = 0; node < layout.nodes().size(); node++) {
                Optional<EventPeak> figure = stated(layout, node, PlanEvent.BOARD_FAILURE);
                int at = node;
                double peak = Math.max(highest(brownout, at, REST), highest(mended, at, 0));
                figure.ifPresent(it -> assertThat(peak)
                        .as("board %s, node %d", board.id(), at)
                        .isLessThanOrEqualTo(it.peakInrushAmps() + 1e-6));
            }
        });
    }

    private static double highest(Trace trace, int node, double fromSeconds) {
        return trace.episodes().stream()
                .filter(each -> each.fromSeconds() >= fromSeconds)
                .mapToDouble(each -> each.peaks().get(node).boundAmps())
                .max()
                .orElse(0);
    }
}
