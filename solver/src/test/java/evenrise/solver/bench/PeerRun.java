package evenrise.solver.bench;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.PlainAnnealing;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.exact.ExactPeer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * One method on one project, in a process of its own, so that methods share no memory and none takes another down.
 * Arguments: project, method, seconds, threads, seed, where to write the plans and a note.
 */
final class PeerRun {
    /** Moves of the engine, of one thread, that make the plan from which a warm solver begins; their time counts. */
    private static final long WARM_MOVES = 20_000;

    /** Held, because a logger that nobody holds forgets its level. */
    private static final Logger ROOT = Logger.getLogger("");

    private final Project project;
    private final double seconds;
    private final int threads;
    private final long seed;
    private final long startNanos = System.nanoTime();
    private double boundAmps;
    private String note = "";

    private PeerRun(Project project, double seconds, int threads, long seed) {
        this.project = project;
        this.seconds = seconds;
        this.threads = threads;
        this.seed = seed;
    }

    public static void main(String[] arguments) throws Exception {
        ROOT.setLevel(Level.OFF);
        Project project = BenchProjects.read(arguments[0]);
        PeerRun run = new PeerRun(
                project,
                Double.parseDouble(arguments[2]),
                Integer.parseInt(arguments[3]),
                Long.parseLong(arguments[4]));
        Path folder = Path.of(arguments[5]);
        List<Plan> plans = new ArrayList<>();
        try {
            run.plan(Peer.of(arguments[1]), plans::add);
        } catch (OutOfMemoryError e) {
            run.note = "the model does not fit in " + Runtime.getRuntime().maxMemory() / (1 << 20) + " MB";
        }
        double used = (System.nanoTime() - run.startNanos) / 1e9;
        for (int i = 0; i < plans.size(); i++) {
            PlanFile.write(
                    PlanFinisher.timed(project, plans.get(i)), folder.resolve("plan" + i + ".json"), Format.JSON);
        }
        Files.writeString(
                folder.resolve("note.txt"),
                String.format(Locale.ROOT, "%.3f%n%.9f%n%s%n", used, run.boundAmps, run.note));
        System.exit(0);
    }

    private void plan(Peer peer, Consumer<Plan> found) throws Exception {
        switch (peer) {
            case ENGINE -> {
                PlanningOutcome outcome = engine(new Budget.Time(Duration.ofMillis((long) (seconds * 1000))), threads);
                note = String.format(Locale.ROOT, "%,d moves", outcome.moves());
                found.accept(outcome.plan());
            }
            case CP_SAT -> exact(Optional.empty(), seconds, found);
            case CP_SAT_WARM -> {
                Plan first = engine(new Budget.Moves(WARM_MOVES), 1).plan();
                found.accept(first);
                double left = seconds - (System.nanoTime() - startNanos) / 1e9;
                exact(Optional.of(PlanFinisher.timed(project, first)), Math.max(1, left), found);
            }
            case ANNEALING -> anneal(found);
            case LIST_ORDER -> found.accept(ListOrderLayout.of(project));
            default -> throw new IllegalStateException(peer.toString());
        }
    }

    private PlanningOutcome engine(Budget budget, int searches) {
        return new Planner(new PlanningRequest(project, Optional.empty(), budget, seed, searches), progress -> {})
                .plan();
    }

    private void exact(Optional<Plan> from, double left, Consumer<Plan> found) {
        ExactPeer.Answer answer = ExactPeer.run(project, from, left, threads, seed);
        answer.plan().ifPresent(found);
        boundAmps = answer.boundAmps();
        note = answer.note();
    }

    private void anneal(Consumer<Plan> found) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        List<PlainAnnealing> annealings = new ArrayList<>();
        for (int i = 0; i < threads; i++) {
            annealings.add(new PlainAnnealing(project, seed + 1_000_003L * i));
        }
        double left = seconds - (System.nanoTime() - startNanos) / 1e9;
        List<Future<Plan>> plans = annealings.stream()
                .map(each -> pool.submit(() -> each.run(Math.max(0.1, left))))
                .toList();
        for (Future<Plan> plan : plans) {
            found.accept(plan.get());
        }
        pool.shutdown();
        note = String.format(
                Locale.ROOT,
                "%,d moves",
                annealings.stream().mapToLong(PlainAnnealing::moves).sum());
    }
}
