package evenrise.solver.bench;

import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The engine and its peers on the same projects, in the same time of the processor, with as many threads; the referee judges each plan. */
final class PeerBenchmark {
    private static final Comparator<Verdict> BETTER = Comparator.<Verdict>comparingInt(
                    verdict -> verdict.violations().size())
            .thenComparingDouble(verdict -> verdict.metrics().objective());

    private static final long FIRST_MOVES = 100_000;
    private static final int MOST_RUNS = 4;

    /** Of its time the engine may use so much, and is run again where it used less than so much. */
    private static final double MOST_PART = 1.02;

    private static final double LEAST_PART = 0.85;
    private static final double AIMED_PART = 0.95;

    /** On a busy machine, seconds of the clock for one of the processor. */
    private static final double MOST_WAITING = 20;

    private final BenchSettings settings;
    private final BenchTable table = new BenchTable(
            "project", "loads", "method", "seed", "seconds", "objective", "broken", "bound", "gap %", "ratio", "note");

    private PeerBenchmark(BenchSettings settings) {
        this.settings = settings;
    }

    static void print(BenchSettings settings) throws IOException, InterruptedException {
        new PeerBenchmark(settings).run();
    }

    private void run() throws IOException, InterruptedException {
        System.out.printf(
                Locale.ROOT,
                "Peers: %.0f s of the processor for each of %d threads or workers. Objective, broken rules and gap as the"
                        + " referee and the bound of the row say; ratio: objective over this engine's, same seed.%n",
                settings.seconds(),
                settings.threads());
        settings.peers().forEach(peer -> System.out.println("  " + peer + ": " + peer.meaning()));
        table.head(System.out);
        for (String name : settings.projects()) {
            Project project = BenchProjects.read(name);
            for (long seed : settings.seeds()) {
                Optional<Double> engine = Optional.empty();
                for (Peer peer : settings.peers()) {
                    if (peer.isSeeded() || seed == settings.seeds().get(0)) {
                        engine = row(name, project, seed, peer, engine);
                    }
                }
            }
        }
    }

    /** @return the engine's objective, once it is known */
    private Optional<Double> row(String name, Project project, long seed, Peer peer, Optional<Double> engine)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("bench");
        boolean ended = peer == Peer.ENGINE ? searched(name, seed, folder) : ran(name, seed, peer, 0, folder);
        List<String> cells = new ArrayList<>(List.of(
                BenchProjects.label(name),
                Integer.toString(project.loads().size()),
                peer.toString(),
                peer.isSeeded() ? Long.toString(seed) : ""));
        List<String> said = ended ? Files.readAllLines(folder.resolve("note.txt")) : List.of("", "0", lastWord(folder));
        Optional<Verdict> best = verdicts(project, folder).min(BETTER);
        boolean isSound = best.isPresent() && best.get().violations().isEmpty();
        double bound = Math.max(ProvenBounds.of(project).objective(), Double.parseDouble(said.get(1)));
        Optional<Double> objective = best.map(verdict -> verdict.metrics().objective());
        Optional<Double> known = peer == Peer.ENGINE && isSound ? objective : engine;
        cells.add(said.get(0).isEmpty() ? "-" : number(Double.parseDouble(said.get(0)), 1));
        cells.add(objective.map(amps -> number(amps, 3)).orElse("-"));
        cells.add(best.map(verdict -> Integer.toString(verdict.violations().size()))
                .orElse("-"));
        cells.add(number(bound, 3));
        cells.add(isSound ? number(100 * (objective.get() - bound) / objective.get(), 2) : "-");
        cells.add(isSound && known.isPresent() ? number(objective.get() / known.get(), 4) : "-");
        cells.add(said.size() > 2 ? said.get(2) : "");
        table.row(System.out, cells);
        delete(folder);
        return known;
    }

    /** The engine with as many moves as the time takes, found by runs of its own, each as cold as that of any peer. */
    private boolean searched(String name, long seed, Path folder) throws IOException, InterruptedException {
        long moves = FIRST_MOVES;
        for (int run = 1; ran(name, seed, Peer.ENGINE, moves, folder); run++) {
            double part = Double.parseDouble(
                            Files.readAllLines(folder.resolve("note.txt")).get(0))
                    / settings.seconds();
            if (part <= MOST_PART && (part >= LEAST_PART || run >= MOST_RUNS)) {
                return true;
            }
            moves = Math.max(1, (long) (moves * AIMED_PART / part));
        }
        return false;
    }

    private boolean ran(String name, long seed, Peer peer, long moves, Path folder)
            throws IOException, InterruptedException {
        return Child.run(
                PeerRun.class,
                settings.seconds() * MOST_WAITING + 120,
                folder.resolve("out.txt"),
                List.of(
                        name,
                        peer.toString(),
                        Double.toString(settings.seconds()),
                        Integer.toString(settings.threads()),
                        Long.toString(seed),
                        folder.toString(),
                        Long.toString(moves)));
    }

    private static String lastWord(Path folder) throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("out.txt"));
        return lines.isEmpty()
                ? "no answer: the model was not built or solved in the time, or the process ran out of memory"
                : lines.get(0);
    }

    private static Stream<Verdict> verdicts(Project project, Path folder) throws IOException {
        List<Verdict> verdicts = new ArrayList<>();
        for (int i = 0; Files.exists(folder.resolve("plan" + i + ".json")); i++) {
            Plan plan =
                    PlanFile.read(folder.resolve("plan" + i + ".json")).value().orElseThrow();
            verdicts.add(Referee.judge(project, plan));
        }
        return verdicts.stream();
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    static String number(double number, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", number);
    }
}
