package evenrise.model;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.TripCurve;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Draws a finished plan first and the project around it. */
final class PlantedPlant {
    private static final List<String> NAMES = List.of(
            "Sub \"left\"",
            "Bühne: rechts",
            "yes",
            "007",
            "1e3",
            "~",
            "# rack",
            "- delay",
            "mixer's rack",
            "  wide  ",
            "two\nlines",
            "{a: b}",
            "Verstärker 𝄞",
            "back\\slash",
            "null",
            "tab\tbed");

    private final Random random;
    private final PhaseSystem system;
    private final List<Panel> panels = new ArrayList<>();
    private final List<BoardType> types = new ArrayList<>();
    private final List<Board> boards = new ArrayList<>();
    private final List<ShutdownGroup> groups = new ArrayList<>();
    private final List<Placed> placed = new ArrayList<>();
    private final Map<String, BoardSetting> settings = new HashMap<>();
    private final Set<String> taken = new HashSet<>();

    /** A load and its place; {@code board} is null for an unswitched one. */
    private static final class Placed {
        final LoadBuilder builder;
        final String id;
        Load load;
        Panel panel;
        int slot;
        List<Phase> phases;
        Board board;
        int output;
        double onSeconds;
        ShutdownGroup group;
        Role role;
        double settleSeconds;

        Placed(String id) {
            this.id = id;
            this.builder = Fixtures.aLoad(id);
        }
    }

    PlantedPlant(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L + 12345);
        system = PhaseSystem.values()[random.nextInt(3)];
    }

    ARandomProject.Planted plant() {
        drawPanels();
        drawBoards();
        for (Board board : boards) {
            fill(board);
        }
        for (int n = random.nextInt(5); n >= 0 || placed.isEmpty(); n--) {
            place(null, 0, null);
        }
        time();
        giveRoles();
        for (Placed it : placed) {
            describe(it);
        }
        relate();
        for (Placed it : placed) {
            it.load = it.builder.build();
        }
        return new ARandomProject.Planted(project(), plan());
    }

    private void drawPanels() {
        for (int n = 1 + random.nextInt(4); n > 0; n--) {
            int slots = 12 + random.nextInt(25);
            PanelBuilder panel = Fixtures.aPanel("P" + (panels.size() + 1))
                    .slots(slots)
                    .numbering(SlotNumbering.values()[random.nextInt(2)]);
            if (random.nextBoolean()) {
                List<Phase> rotation = new ArrayList<>(system.phases());
                Collections.shuffle(rotation, random);
                panel.phaseRotation(rotation);
            }
            if (random.nextBoolean()) {
                panel.reservedSlots(slots, 1 + random.nextInt(slots - 1));
            }
            if (random.nextInt(3) == 0) {
                panel.switchedSlots(IntStream.rangeClosed(1, slots)
                        .filter(slot -> random.nextInt(5) > 0)
                        .boxed()
                        .toList());
            }
            panels.add(panel.build());
        }
    }

    private void drawBoards() {
        for (int n = 1 + random.nextInt(2); n > 0; n--) {
            types.add(Fixtures.aBoardType("type-" + types.size())
                    .outputs(2 + random.nextInt(7))
                    .startDelaySeconds(0, 0.5, 1 + random.nextInt(8))
                    .stepSeconds(0.25, 0.5 + random.nextInt(4))
                    .price(random.nextInt(500))
                    .build());
        }
        for (int n = random.nextInt(6); n > 0; n--) {
            Panel home = any(panels);
            BoardType type = any(types);
            BoardBuilder board = Fixtures.aBoard(home.id() + "-B" + (boards.size() + 1))
                    .type(type.id())
                    .in(home.id());
            if (random.nextInt(3) == 0) {
                board.reaches(someIds(panels, random.nextBoolean() ? home : any(panels)));
            }
            if (!boards.isEmpty() && random.nextInt(3) == 0) {
                board.after(any(boards).id());
            }
            boards.add(board.build());
        }
        for (Board board : boards) {
            BoardType type = type(board);
            settings.put(
                    board.id(), new BoardSetting(board.id(), any(type.startDelaySeconds()), any(type.stepSeconds())));
        }
    }

    /** Runs of groups and single loads, all of one emergency class. */
    private void fill(Board board) {
        boolean drops = random.nextBoolean();
        int outputs = type(board).outputs();
        int output = 1 + random.nextInt(2);
        while (output <= outputs) {
            boolean grouped = drops || random.nextBoolean();
            int members = Math.min(grouped ? 1 + random.nextInt(4) : 1, outputs - output + 1);
            GroupBuilder draft = Fixtures.aGroup("group-" + groups.size());
            if (random.nextInt(3) == 0) {
                draft.samePanel();
            }
            ShutdownGroup group = grouped ? (drops ? draft.drops() : draft.holds()).build() : null;
            boolean used = false;
            for (int n = 0; n < members; n++) {
                used |= place(board, output++, group);
            }
            if (grouped && used) {
                groups.add(group);
            }
            output += random.nextInt(2);
        }
    }

    private boolean place(Board board, int output, ShutdownGroup group) {
        Placed it = new Placed("L" + (placed.size() + 1));
        List<Panel> where = new ArrayList<>(panels);
        if (board != null) {
            where.removeIf(panel -> !board.reaches().contains(panel.id()));
        }
        if (group != null && group.samePanel()) {
            for (Placed other : placed) {
                if (group.equals(other.group)) {
                    where = List.of(other.panel);
                }
            }
        }
        it.panel = any(where);
        it.board = board;
        it.output = output;
        it.group = group;
        int poles = 1 + (random.nextInt(3) == 0 ? random.nextInt(system.phases().size()) : 0);
        SlotLayout layout = new SlotLayout(it.panel, system);
        List<Integer> slots = new ArrayList<>(
                IntStream.rangeClosed(1, it.panel.slots()).boxed().toList());
        Collections.shuffle(slots, random);
        for (int slot : slots) {
            List<Integer> span = layout.span(slot, poles);
            List<Phase> phases = span.stream().map(layout::phase).toList();
            boolean fits = !span.isEmpty()
                    && new HashSet<>(phases).size() == poles
                    && span.stream()
                            .noneMatch(s -> taken.contains(it.panel.id() + s)
                                    || it.panel.reservedSlots().contains(s)
                                    || board != null
                                            && it.panel
                                                    .switchedSlots()
                                                    .filter(ok -> !ok.contains(s))
                                                    .isPresent());
            if (fits) {
                span.forEach(s -> taken.add(it.panel.id() + s));
                it.slot = slot;
                it.phases = phases;
                it.builder.poles(poles);
                placed.add(it);
                return true;
            }
        }
        return false;
    }

    private void time() {
        Map<String, Double> lastOn = new HashMap<>();
        for (Board board : boards) { // a board only follows an earlier one
            double begin = board.after().map(lastOn::get).orElse(0.0);
            BoardSetting setting = settings.get(board.id());
            double last = begin;
            for (Placed it : placed) {
                if (it.board == board) {
                    it.onSeconds = begin + setting.delaySeconds() + (it.output - 1) * setting.betweenSeconds();
                    last = Math.max(last, it.onSeconds);
                }
            }
            lastOn.put(board.id(), last);
        }
    }

    private void giveRoles() {
        List<Placed> inTime = switched();
        inTime.sort((a, b) -> Double.compare(a.onSeconds, b.onSeconds));
        double processingUntil = inTime.isEmpty() ? 0 : any(inTime).onSeconds;
        double auxiliaryUntil = inTime.isEmpty() ? 0 : any(inTime).onSeconds;
        double firstAmplifier = Double.POSITIVE_INFINITY;
        for (Placed it : inTime) {
            if (it.onSeconds < processingUntil) {
                it.role = Role.PROCESSING;
            } else if (it.onSeconds < auxiliaryUntil) {
                it.role = Role.AUXILIARY;
            } else {
                it.role = Role.AMPLIFIER;
                firstAmplifier = Math.min(firstAmplifier, it.onSeconds);
            }
        }
        for (Placed it : placed) {
            if (it.board == null) {
                it.role = any(List.of(Role.values()));
            } else if (random.nextBoolean()) {
                double room = it.role == Role.PROCESSING && firstAmplifier < 1e9 ? firstAmplifier - it.onSeconds : 5;
                it.settleSeconds = random.nextBoolean() ? room : room / 2;
                it.builder.settleSeconds(it.settleSeconds);
            }
            it.builder.role(it.role);
        }
    }

    private void describe(Placed it) {
        LoadBuilder load = it.builder;
        double running = random.nextInt(8) == 0 ? 0 : random.nextDouble() * 16;
        load.runningAmps(random.nextBoolean() ? Math.round(running * 10) / 10.0 : running);
        load.breakerAmps(any(List.of(16.0, 20.0, 32.0)));
        if (it.board == null) {
            load.unswitched();
        } else if (it.group != null) {
            load.group(it.group.id());
        }
        if (random.nextBoolean()) {
            load.name(any(NAMES));
        }
        if (random.nextBoolean()) {
            load.curve(any(List.of(TripCurve.values())));
        }
        if (random.nextBoolean()) {
            load.idleAmps(running * random.nextDouble() * 1.2);
        }
        if (random.nextBoolean()) {
            load.powerFactor(0.5 + random.nextInt(50) / 100.0).thirdHarmonic(random.nextInt(90) / 100.0);
        }
        if (random.nextBoolean()) {
            load.inrushPeakAmps(random.nextInt(200)).inrushHalfMillis(1 + random.nextInt(400));
        }
    }

    private void relate() {
        for (Placed it : placed) {
            List<String> after = new ArrayList<>();
            List<String> apart = new ArrayList<>();
            List<String> alike = new ArrayList<>();
            for (Placed other : placed) {
                boolean before = it.board != null
                        && other.board != null
                        && other.onSeconds + other.settleSeconds <= it.onSeconds
                        && (other.onSeconds < it.onSeconds || placed.indexOf(other) < placed.indexOf(it));
                if (before && random.nextInt(12) == 0) {
                    after.add(other.id);
                }
                if (other.panel != it.panel && random.nextInt(10) == 0) {
                    apart.add(other.id);
                }
                if (other != it
                        && new HashSet<>(other.phases).equals(new HashSet<>(it.phases))
                        && random.nextInt(12) == 0) {
                    alike.add(other.id);
                }
            }
            it.builder.comesAfter(after).apartFrom(apart).samePhaseAs(alike);
            if (random.nextInt(4) == 0) {
                it.builder.panels(someIds(panels, it.panel));
            }
            fix(it);
        }
    }

    private void fix(Placed it) {
        if (random.nextInt(8) == 0) {
            it.builder.fixedPanel(it.panel.id());
        }
        if (random.nextInt(8) == 0) {
            it.builder.fixedSlot(it.slot);
        }
        if (it.board != null && random.nextInt(8) == 0) {
            it.builder.fixedBoard(it.board.id());
        }
        if (it.board != null && random.nextInt(8) == 0) {
            it.builder.fixedOutput(it.output);
        }
    }

    private Project project() {
        double fraction = random.nextBoolean() ? 0.8 : 1;
        SupplyBuilder supply = Fixtures.aSupply()
                .system(system)
                .lineToNeutralVolts(random.nextBoolean() ? 120 : 230)
                .frequencyHertz(random.nextBoolean() ? 60 : 50)
                .continuousFraction(fraction)
                .neutralFactor(4)
                .ratedAmps(rating(placed, fraction));
        double tolerance = random.nextBoolean() ? 0 : 0.05;
        if (random.nextBoolean()) {
            supply.inrushLimitAmps(peak(placed, tolerance));
        }
        ProjectBuilder project = Fixtures.aProject().name(any(NAMES)).timingToleranceSeconds(tolerance);
        if (random.nextBoolean()) {
            project.maxDurationSeconds(duration());
        }
        if (random.nextBoolean()) {
            project.objective(ObjectiveWeights.builder()
                    .peakInrush(1)
                    .supplyImbalance(random.nextInt(3))
                    .panelImbalance(0.5)
                    .duration(random.nextDouble())
                    .boards(10)
                    .build());
        }
        Project draft = project.build();
        return draft.with()
                .supply(supply.build())
                .panels(panels.stream()
                        .map(panel -> rated(panel, fraction, tolerance))
                        .toList())
                .boardTypes(types)
                .boards(boards)
                .shutdownGroups(groups)
                .loads(placed.stream().map(it -> it.load).toList())
                .build();
    }

    private Panel rated(Panel panel, double fraction, double tolerance) {
        List<Placed> here = placed.stream().filter(it -> it.panel == panel).toList();
        return panel.with()
                .ratedAmps(rating(here, fraction))
                .neutralFactor(4)
                .inrushLimitAmps(
                        random.nextInt(3) == 0 ? OptionalDouble.of(peak(here, tolerance) + 1) : OptionalDouble.empty())
                .build();
    }

    /** Just enough for the worst phase, and for a neutral of four times as much under any angle. */
    private double rating(List<Placed> here, double fraction) {
        double worst = worstPhase(here, it -> it.load.runningAmps()) / fraction;
        double neutral = here.stream()
                .filter(it -> it.load.poles() == 1)
                .mapToDouble(it -> it.load.runningAmps())
                .sum();
        return Math.max(1, Math.max(worst, neutral / 4) * 1.000001);
    }

    private double peak(List<Placed> here, double g) {
        return 1
                + here.stream()
                        .mapToDouble(now ->
                                worstPhase(here, it -> envelope(it, now.board == null ? -2 * g : now.onSeconds - g, g)))
                        .max()
                        .orElse(0);
    }

    private static double envelope(Placed it, double t, double g) {
        double base = Math.sqrt(2) * it.load.idleAmps();
        if (it.board == null) {
            return base;
        }
        double since = t - (it.onSeconds - g);
        double excess = Math.max(0, it.load.inrushAmps() - base);
        double half = it.load.inrushHalfMillis() / 1000;
        return since < -1e-9 ? 0 : base + excess * Math.pow(2, -Math.max(0, since - 2 * g) / half);
    }

    private double worstPhase(List<Placed> here, ToDoubleFunction<Placed> amps) {
        return system.phases().stream()
                .mapToDouble(phase -> here.stream()
                        .filter(it -> it.phases.contains(phase))
                        .mapToDouble(amps)
                        .sum())
                .max()
                .orElse(0);
    }

    private double duration() {
        return switched().stream().mapToDouble(it -> it.onSeconds).max().orElse(0);
    }

    private Plan plan() {
        double end = duration();
        List<Assignment> assignments = placed.stream()
                .map(it -> {
                    AssignmentBuilder a =
                            Fixtures.anAssignment(it.id).at(it.panel.id(), it.slot, it.phases.toArray(Phase[]::new));
                    if (it.board != null) {
                        a.on(it.board.id(), it.output).onSeconds(it.onSeconds).offSeconds(end - it.onSeconds);
                    }
                    return a.build();
                })
                .toList();
        return Plan.builder()
                .boards(boards.stream().map(board -> settings.get(board.id())).toList())
                .assignments(assignments)
                .build();
    }

    private List<Placed> switched() {
        return new ArrayList<>(placed.stream().filter(it -> it.board != null).toList());
    }

    private BoardType type(Board board) {
        return types.stream()
                .filter(type -> type.id().equals(board.type()))
                .findFirst()
                .orElseThrow();
    }

    private List<String> someIds(List<Panel> from, Panel always) {
        return from.stream()
                .filter(panel -> panel == always || random.nextBoolean())
                .map(Panel::id)
                .toList();
    }

    private <T> T any(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
