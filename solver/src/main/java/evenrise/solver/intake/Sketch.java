package evenrise.solver.intake;

import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A project from branches: loads, and a first supply, panels and boards with room to spare, to be replaced by the real ones. */
final class Sketch {
    /** Part of slots and of ratings that stays free; common practice, no source. */
    private static final double SPARE = 0.25;

    /** What processing gear needs until others may follow, where a list says nothing; common practice, no source. */
    private static final double SETTLE_SECONDS = 5;

    /** In ampere, of panels as they are sold in either practice; common practice, no source. */
    private static final double[] PANEL_RATINGS = {63, 100, 125, 160, 200, 225, 250, 400, 600};

    private static final List<Double> DELAYS = List.of(0.0, 1.0, 2.0, 5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 45.0, 60.0);
    private static final List<Double> STEPS = List.of(0.25, 0.5, 1.0, 2.0);

    private final Mapping mapping;
    private final Map<String, Integer> ids = new HashMap<>();
    private final List<Notice> notices = new ArrayList<>();

    Sketch(Mapping mapping) {
        this.mapping = mapping;
    }

    List<Notice> notices() {
        return notices;
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
        keepRedundantApart(branches, loads);
        double amps = phaseAmps(loads);
        double rated = rating(amps * (1 + SPARE) / mapping.continuousFraction());
        if (rated > MOST_SUPPLY_AMPS) {
            notices.add(new Notice(
                    true,
                    "",
                    String.format(
                            java.util.Locale.ROOT,
                            "the list draws %.0f A a phase, more than one supply can have. Maybe watts are in another"
                                    + " unit, or each building is a list of its own.",
                            amps)));
            return Optional.empty();
        }
        List<Panel> panels = panels(loads);
        List<Board> boards = boards(loads, groups, panels);
        BoardType type = BoardType.builder()
                .id("board-" + mapping.boardOutputs())
                .outputs(mapping.boardOutputs())
                .startDelaySeconds(DELAYS)
                .stepSeconds(STEPS)
                .price(0)
                .build();
        notices.add(Notice.guess(String.format(
                java.util.Locale.ROOT,
                "a supply of %.0f A, panels of %d slots (%d), boards of %d outputs (%d): a first sketch with a quarter"
                        + " of the slots and ratings to spare, to be replaced by the real ones",
                rated,
                mapping.panelSlots(),
                panels.size(),
                mapping.boardOutputs(),
                boards.size())));
        notices.add(Notice.guess("processing gear settles within " + (int) SETTLE_SECONDS + " s, inrush halves in "
                + (int) Bundler.HALF_MILLIS + " ms, third harmonic 0.3"));
        notices.add(Notice.guess("on an emergency the amplifiers of a zone drop, everything else of it holds"));
        return Optional.of(Project.builder()
                .name(name)
                .supply(Supply.builder()
                        .system(mapping.system())
                        .lineToNeutralVolts(mapping.lineToNeutralVolts())
                        .frequencyHertz(mapping.frequencyHertz())
                        .ratedAmps(rated)
                        .continuousFraction(mapping.continuousFraction())
                        .neutralFactor(2)
                        .build())
                .timingToleranceSeconds(0.05)
                .panels(panels)
                .boardTypes(boards.isEmpty() ? List.of() : List.of(type))
                .boards(boards)
                .shutdownGroups(List.copyOf(groups.values()))
                .loads(loads)
                .build());
    }

    /** A zone's amplifiers are one group that drops, the rest of it another that holds. */
    private Optional<String> group(Bundler.Branch branch, Map<String, ShutdownGroup> groups) {
        String zone = branch.kind().zone();
        if (zone.isEmpty()) {
            return Optional.empty();
        }
        boolean drops = branch.kind().role() == Role.AMPLIFIER;
        String id = slug(zone) + (drops ? "-drop" : "-hold");
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
        double amps = sum(pieces, Item::amps);
        double watts = pieces.stream()
                .mapToDouble(item -> item.amps() * item.powerFactor())
                .sum();
        Map<String, Integer> counts = new TreeMap<>();
        pieces.forEach(item -> counts.merge(item.name(), 1, Integer::sum));
        List<String> words = new ArrayList<>();
        counts.forEach((name, count) -> words.add(count == 1 ? name : count + " × " + name));
        String where = branch.kind().room().isEmpty() ? "" : branch.kind().room() + ": ";
        boolean isProcessing = branch.kind().role() == Role.PROCESSING;
        return Load.builder()
                .id(unique(slug(pieces.get(0).name())))
                .name(where + String.join(", ", words))
                .role(branch.kind().role())
                .poles(branch.kind().poles())
                .breakerAmps(branch.breakerAmps())
                .curve(mapping.curve())
                .runningAmps(amps)
                .idleAmps(sum(pieces, Item::idleAmps))
                .powerFactor(Math.min(1, thousandths(watts / amps)))
                .thirdHarmonic(0.3)
                .inrushPeakAmps(sum(pieces, Item::inrushPeakAmps))
                .inrushHalfMillis(Bundler.HALF_MILLIS)
                .settleSeconds(isProcessing ? SETTLE_SECONDS : 0)
                .shutdownGroup(group)
                .build();
    }

    /** What is fed A and what is fed B of one room and zone sits in different panels. */
    private void keepRedundantApart(List<Bundler.Branch> branches, List<Load> loads) {
        Map<List<Object>, List<Integer>> pairs = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            Item.Kind kind = branches.get(i).kind();
            if (kind.feed().equals("B")) {
                pairs.computeIfAbsent(List.of(site(kind), kind.role(), kind.zone()), any -> new ArrayList<>())
                        .add(i);
            }
        }
        for (int i = 0; i < branches.size(); i++) {
            Item.Kind kind = branches.get(i).kind();
            List<Integer> others = pairs.getOrDefault(List.of(site(kind), kind.role(), kind.zone()), List.of());
            if (kind.feed().equals("A") && !others.isEmpty()) {
                Load it = loads.get(i);
                loads.set(
                        i,
                        it.withApartFrom(
                                others.stream().map(k -> loads.get(k).id()).toList()));
            }
        }
    }

    /** The room without its rack: redundant pieces often stand in racks beside each other. */
    private static String site(Item.Kind kind) {
        return kind.room().replaceAll(", [^,]*$", "");
    }

    private List<Panel> panels(List<Load> loads) {
        int poles = loads.stream().mapToInt(Load::poles).sum();
        int phases = mapping.system().phases().size();
        double usable = mapping.panelSlots() / (1 + SPARE);
        int count = (int) Math.max(1, Math.ceil(poles / usable));
        boolean hasFeeds = loads.stream().anyMatch(load -> !load.apartFrom().isEmpty());
        count = Math.max(count, hasFeeds ? 2 : 1);
        double amps = phaseAmps(loads) * (1 + SPARE) / count / mapping.continuousFraction();
        while (amps > PANEL_RATINGS[PANEL_RATINGS.length - 1]) {
            count++;
            amps = phaseAmps(loads) * (1 + SPARE) / count / mapping.continuousFraction();
        }
        double wanted = Math.max(
                amps, 2 * Collections.max(loads.stream().map(Load::runningAmps).toList()));
        double rated = PANEL_RATINGS[PANEL_RATINGS.length - 1];
        for (int i = PANEL_RATINGS.length - 1; i >= 0; i--) {
            if (PANEL_RATINGS[i] >= wanted) {
                rated = PANEL_RATINGS[i];
            }
        }
        SlotNumbering numbering = phases == 3 && mapping.lineToNeutralVolts() > 200
                ? SlotNumbering.SEQUENTIAL
                : SlotNumbering.ALTERNATING;
        List<Panel> panels = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            panels.add(Panel.builder()
                    .id("P" + i)
                    .slots(mapping.panelSlots())
                    .ratedAmps(rated)
                    .neutralFactor(2)
                    .numbering(numbering)
                    .build());
        }
        return panels;
    }

    /** A group that fits one board has one of its own; a larger one as many as it needs; what is in no group shares others. */
    private List<Board> boards(List<Load> loads, Map<String, ShutdownGroup> groups, List<Panel> panels) {
        Map<String, Integer> sizes = new LinkedHashMap<>();
        loads.forEach(load -> sizes.merge(load.shutdownGroup().orElse(""), 1, Integer::sum));
        int count = 0;
        for (int size : sizes.values()) {
            count += (int) Math.ceil(size / (double) mapping.boardOutputs());
        }
        List<String> all = panels.stream().map(Panel::id).toList();
        List<Board> boards = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String panel = all.get(i % all.size());
            boards.add(Board.builder()
                    .id("B" + (i + 1))
                    .type("board-" + mapping.boardOutputs())
                    .panel(panel)
                    .reaches(all)
                    .build());
        }
        return boards;
    }

    private double phaseAmps(List<Load> loads) {
        double sum = loads.stream()
                .mapToDouble(load -> load.runningAmps() * load.poles())
                .sum();
        return sum / mapping.system().phases().size();
    }

    private double rating(double amps) {
        Practice practice = mapping.lineToNeutralVolts() > 200 ? Practice.IEC : Practice.NEC;
        return StandardRatings.atLeast(practice, amps).orElse(Math.ceil(amps / 1000) * 1000);
    }

    /** Datasheets say no more, and round figures can be proven about. */
    private static double thousandths(double figure) {
        return Math.round(1000 * figure) / 1000.0;
    }

    private String unique(String id) {
        int seen = ids.merge(id, 1, Integer::sum);
        return id + "-" + seen;
    }

    private static String slug(String name) {
        String plain = Meaning.plain(name).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        String cut = plain.length() > 24 ? plain.substring(0, 24).replaceAll("-$", "") : plain;
        return cut.isEmpty() ? "load" : cut;
    }

    private static double sum(List<Item> pieces, java.util.function.ToDoubleFunction<Item> of) {
        return thousandths(pieces.stream().mapToDouble(of).sum());
    }
}
