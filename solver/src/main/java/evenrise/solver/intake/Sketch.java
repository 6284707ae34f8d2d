package evenrise.solver.intake;

import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.Supply;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A project from branches: loads, and a first supply, panels and boards with room to spare, to be replaced by the real ones. */
final class Sketch {
    /** Part of slots and of ratings that stays free; common practice, no source. */
    /** Less than anything that is felt, and enough that no board is used that others could stand in for. */
    private static final double BOARD_WEIGHT = 0.1;

    static final double SPARE = 0.25;

    private final Mapping mapping;
    private final Practice practice;
    private final Notices notices;
    private final LoadIds ids = new LoadIds();

    Sketch(Mapping mapping, Notices notices) {
        this.mapping = mapping;
        this.practice = mapping.practiceOfRatings();
        this.notices = notices;
    }

    /** The most that a supply may be rated in a project. */
    private static final double MOST_SUPPLY_AMPS = 100_000;

    /** Empty where no one supply carries it, which is a problem that is noted. */
    Optional<Project> project(String name, List<Bundler.Branch> branches) {
        Map<String, ShutdownGroup> groups = new LinkedHashMap<>();
        List<Load> loads = new ArrayList<>();
        for (Bundler.Branch branch : branches) {
            Optional<String> group = group(branch, groups);
            loads.add(load(branch, group));
        }
        new RedundantFeeds(notices).keepApart(branches, loads);
        new BehindContactors(notices).tie(branches, loads);
        List<SwitchedSystem> systems = branches.stream()
                .map(branch -> branch.kind().ties().system())
                .filter(system -> !system.isEmpty())
                .distinct()
                .map(id -> new SwitchedSystem(id, List.of()))
                .toList();
        double amps = SketchedPanels.phaseAmps(loads, mapping.system());
        double rated = supplyRating(loads, amps);
        if (rated > MOST_SUPPLY_AMPS) {
            notices.add(Notice.problem(String.format(
                    Locale.ROOT,
                    "the list draws %.0f A a phase, more than one supply can have. Maybe watts are in another unit, or "
                            + "each building is a list of its own.",
                    amps)));
            return Optional.empty();
        }
        List<Panel> panels = new SketchedPanels(mapping).of(loads);
        BoardSketch control = new BoardSketch(mapping, notices);
        List<BoardType> types = control.types(loads);
        List<Board> boards = control.boards(loads, panels);
        notices.guess(String.format(
                Locale.ROOT,
                "a supply of %.0f A, panels of %d slots (%d): a first sketch with a quarter of the slots and ratings to"
                        + " spare, to be replaced by the real ones",
                rated,
                mapping.panelSlots(),
                panels.size()));
        notices.guess("ratings by the practice of " + practice + ", as "
                + (mapping.practice().isPresent()
                        ? "the mapping says"
                        : "is usual where a supply has this voltage and frequency"));
        if (loads.stream().anyMatch(load -> load.role() == Role.PROCESSING)) {
            notices.guess("processing settles in 30 s (receivers, stage boxes), 120 s (computers, consoles, network"
                    + " switches), 60 s (any other)");
        }
        notices.guess(
                "how fast an inrush halves, and third harmonics, are those usual for each kind of gear: 3 ms and 0.3"
                        + " for electronics, 300 ms and none for motors, 20 ms and none for tungsten");
        notices.guess("on an emergency the amplifiers of a zone drop, everything else of it holds");
        return Optional.of(Project.builder()
                .name(name)
                .supply(Supply.builder()
                        .system(mapping.system())
                        .lineToNeutralVolts(mapping.lineToNeutralVolts())
                        .frequencyHertz(mapping.frequencyHertz())
                        .ratedAmps(rated)
                        .continuousFraction(mapping.continuousFraction())
                        .build())
                .timingToleranceSeconds(0.05)
                .panels(panels)
                .boardTypes(types)
                .boards(boards)
                .systems(systems)
                .shutdownGroups(List.copyOf(groups.values()))
                .loads(loads)
                .quantities(new OpenQuantities(notices).of(branches, loads))
                .objective(ObjectiveWeights.DEFAULT.withBoards(BOARD_WEIGHT))
                .electrical(Electrical.builder().practice(practice).build())
                .build());
    }

    /** A zone's amplifiers are one group that drops, the rest of it another that holds. */
    private Optional<String> group(Bundler.Branch branch, Map<String, ShutdownGroup> groups) {
        String zone = branch.kind().zone();
        if (zone.isEmpty() || !branch.kind().isSwitched()) {
            return Optional.empty();
        }
        boolean drops = branch.kind().role() == Role.AMPLIFIER;
        String system = branch.kind().ties().system();
        String id =
                (system.isEmpty() ? "" : LoadIds.slug(system) + "-") + LoadIds.slug(zone) + (drops ? "-drop" : "-hold");
        groups.computeIfAbsent(
                id,
                any -> ShutdownGroup.builder()
                        .id(id)
                        .onEmergency(drops ? OnEmergency.DROP : OnEmergency.HOLD)
                        .samePanel(false)
                        .build());
        return Optional.of(id);
    }

    private Load load(Bundler.Branch branch, Optional<String> group) {
        List<Item> pieces = branch.pieces();
        Item.Kind kind = branch.kind();
        double amps = sum(pieces, Item::amps);
        double watts = pieces.stream()
                .mapToDouble(item -> item.amps() * item.powerFactor())
                .sum();
        double thirds = pieces.stream()
                .mapToDouble(item -> item.amps() * item.gear().usual().thirdHarmonic())
                .sum();
        Set<String> guessed = new TreeSet<>();
        pieces.forEach(item -> guessed.addAll(item.guessed()));
        if (!branch.isStated()) {
            guessed.add("breaker_a");
        }
        boolean isCurveStated = pieces.stream()
                .flatMap(item -> item.circuit().breaker().stream())
                .anyMatch(breaker -> breaker.curve().isPresent());
        if (branch.curve().isPresent() && mapping.curve().isEmpty() && !isCurveStated) {
            guessed.add("curve");
        }
        return Load.builder()
                .id(ids.of(pieces))
                .name(name(branch))
                .role(kind.role())
                .poles(kind.poles())
                .breakerAmps(branch.breakerAmps())
                .curve(branch.curve())
                .switched(kind.isSwitched())
                .runningAmps(amps)
                .idleAmps(sum(pieces, Item::idleAmps))
                .powerFactor(Math.min(1, thousandths(watts / amps)))
                .thirdHarmonic(thousandths(thirds / amps))
                .inrushPeakAmps(sum(pieces, Item::inrushPeakAmps))
                .inrushHalfMillis(most(pieces, Gear.Usual::halfMillis))
                .settleSeconds(most(pieces, Gear.Usual::settleSeconds))
                .shutdownGroup(group)
                .equipment(equipment(pieces))
                .guessed(List.copyOf(guessed))
                .system(Optional.of(kind.ties().system()).filter(system -> !system.isEmpty()))
                .rack(Optional.of(kind.ties().rack()).filter(rack -> !rack.isEmpty()))
                .panels(
                        kind.ties().fedFrom().isEmpty()
                                ? List.of()
                                : List.of(kind.ties().fedFrom()))
                .lineToNeutralVolts(kind.ties().lineToNeutralVolts())
                .offAfterSeconds(kind.ties().offAfterSeconds())
                .build();
    }

    /** The review's rules for motors hold for what is one. */
    private static Optional<Equipment> equipment(List<Item> pieces) {
        return pieces.stream().allMatch(item -> item.gear() == Gear.MOTOR)
                ? Optional.of(Equipment.builder()
                        .motor(Motor.builder()
                                .horsepower(pieces.get(0).horsepower())
                                .build())
                        .build())
                : Optional.empty();
    }

    private static String name(Bundler.Branch branch) {
        Map<String, Integer> counts = new TreeMap<>();
        branch.pieces().forEach(item -> counts.merge(item.name(), 1, Integer::sum));
        List<String> words = new ArrayList<>();
        counts.forEach((name, count) -> words.add(count == 1 ? name : count + " × " + name));
        String where = branch.kind().room().isEmpty() ? "" : branch.kind().room() + ": ";
        String clauses = branch.pieces().get(0).clauses();
        return where + String.join(", ", words) + (clauses.isEmpty() ? "" : " (life safety: " + clauses + ")");
    }

    /** Several on one breaker: what lasts longest counts for all. */
    private static double most(List<Item> pieces, ToDoubleFunction<Gear.Usual> of) {
        return pieces.stream()
                .map(item -> item.gear().usual())
                .mapToDouble(of)
                .max()
                .orElseThrow();
    }

    /** With a quarter to spare, room for phases that differ by the largest load, and no less than the largest breaker. */
    private double supplyRating(List<Load> loads, double phaseAmps) {
        double largest = loads.stream().mapToDouble(Load::runningAmps).max().orElse(0);
        double breaker = loads.stream().mapToDouble(Load::breakerAmps).max().orElse(0);
        double amps = Math.max(phaseAmps * (1 + SPARE), phaseAmps + largest) / mapping.continuousFraction();
        return rating(Math.max(amps, breaker));
    }

    private double rating(double amps) {
        return StandardRatings.atLeast(practice, amps).orElse(Math.ceil(amps / 1000) * 1000);
    }

    /** Datasheets say no more, and round figures can be proven about. */
    private static double thousandths(double figure) {
        return Math.round(1000 * figure) / 1000.0;
    }

    /** What the list remarks of the pieces of each load, by its id. */
    static Map<String, String> notes(Project project, List<Bundler.Branch> branches) {
        Map<String, String> notes = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            String all = branches.get(i).pieces().stream()
                    .flatMap(piece -> Stream.of(
                            piece.circuit().names().noted(), piece.label().notes()))
                    .filter(text -> !text.isEmpty())
                    .distinct()
                    .collect(Collectors.joining("; "));
            if (!all.isEmpty()) {
                notes.put(project.loads().get(i).id(), all);
            }
        }
        return notes;
    }

    private static double sum(List<Item> pieces, ToDoubleFunction<Item> of) {
        return thousandths(pieces.stream().mapToDouble(of).sum());
    }
}
