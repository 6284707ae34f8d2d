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
import evenrise.solver.engine.search.StockLateAcceptance;
import evenrise.solver.exact.ExactPeer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.ToLongFunction;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.IntStream;

/**
 * One method on one project, in a process of its own, so that methods share no memory and none takes another down.
 * Arguments: project, method, seconds of the processor for each thread, threads, seed, where to write the plans and a note,
 * moves of each thread of the engine, which cools with its budget and knows no other one that a busy machine leaves alone.
 */
final class PeerRun {
    /** Moves of the engine, of one thread, that make the plan from which a warm solver begins; their time counts. */
    private static final long WARM_MOVES = 20_000;

    /** A seed of one search is so far from the next one's. */
    private static final long SEED_STEP = 1_000_003;

    /** Held, because a logger that nobody holds forgets its level. */
    private static final Logger ROOT = Logger.getLogger("");

    private final Project project;
    private final Spending spending;
    private final int threads;
    private final long seed;
    private final long moves;
    private double boundAmps;
    private String note = "";

    private PeerRun(Project project, double seconds, int threads, long seed, long moves) {
        this.project = project;
        this.spending = new Spending(seconds * threads);
        this.threads = threads;
        this.seed = seed;
        this.moves = moves;
    }

    public static void main(String[] arguments) throws Exception {
        ROOT.setLevel(Level.OFF);
        Project project = BenchProjects.read(arguments[0]);
        PeerRun run = new PeerRun(
                project,
                Double.parseDouble(arguments[2]),
                Integer.parseInt(arguments[3]),
                Long.parseLong(arguments[4]),
                Long.parseLong(arguments[6]));
        Path folder = Path.of(arguments[5]);
        List<Plan> plans = new ArrayList<>();
        double before = Spending.seconds();
        try {
            run.plan(Peer.of(arguments[1]), plans::add);
        } catch (OutOfMemoryError e) {
            run.note = "the model does not fit in " + Runtime.getRuntime().maxMemory() / (1 << 20) + " MB";
        }
        double used = (Spending.seconds() - before) / run.threads;
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
                PlanningOutcome outcome = engine(moves, threads);
                note = counted(outcome.moves());
                found.accept(outcome.plan());
            }
            case CP_SAT -> exact(Optional.empty(), found);
            case CP_SAT_WARM -> {
                Plan first = engine(WARM_MOVES, 1).plan();
                found.accept(first);
                exact(Optional.of(PlanFinisher.timed(project, first)), found);
            }
            case ANNEALING ->
                sideBySide(
                        each(i -> new PlainAnnealing(project, seed + SEED_STEP * i)),
                        annealing -> annealing.run(spending::part),
                        PlainAnnealing::moves,
                        found);
            case LATE_ACCEPTANCE -> {
                List<StockLateAcceptance> searches = each(i -> new StockLateAcceptance(project, seed + SEED_STEP * i));
                spending.whenUsed(() -> searches.forEach(StockLateAcceptance::stop));
                sideBySide(searches, StockLateAcceptance::call, StockLateAcceptance::moves, found);
            }
            case TEMPERING -> {
                Tempering search = new Tempering(project, seed);
                spending.whenUsed(search::stop);
                found.accept(search.run());
                note = counted(search.moves());
            }
            case LIST_ORDER -> found.accept(ListOrderLayout.of(project));
            default -> throw new IllegalStateException(peer.toString());
        }
    }

    private PlanningOutcome engine(long limit, int searches) {
        Budget budget = new Budget.Moves(limit);
        return new Planner(new PlanningRequest(project, Optional.empty(), budget, seed, searches), progress -> {})
                .plan();
    }

    private void exact(Optional<Plan> from, Consumer<Plan> found) {
        ExactPeer.Answer answer = ExactPeer.run(project, from, spending::whenUsed, threads, seed);
        answer.plan().ifPresent(found);
        boundAmps = answer.boundAmps();
        note = answer.note();
    }

    private <T> List<T> each(IntFunction<T> search) {
        return IntStream.range(0, threads).mapToObj(search).toList();
    }

    private <T> void sideBySide(
            List<T> searches, Function<T, Plan> run, ToLongFunction<T> counter, Consumer<Plan> found) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        List<Callable<Plan>> tasks =
                searches.stream().<Callable<Plan>>map(it -> () -> run.apply(it)).toList();
        for (Future<Plan> plan : pool.invokeAll(tasks)) {
            found.accept(plan.get());
        }
        pool.shutdown();
        note = counted(searches.stream().mapToLong(counter).sum());
    }

    private static String counted(long count) {
        return String.format(Locale.ROOT, "%,d moves", count);
    }
}
