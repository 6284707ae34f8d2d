package evenrise.solver.bench;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.OpenDesk;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a window waits for at the desk: a move by hand with all that follows, and what every free place of a load costs. */
final class DeskBenchmark {
    private static final List<String> USUAL = List.of("drawn:13", "harbour-arena", "drawn:210");
    private static final int WARM = 30;
    private static final int TIMES = 60;
    private static final int KEPT = 10;
    private static final long MOVES = 200;

    private DeskBenchmark() {}

    static void print() throws IOException, InterruptedException {
        System.out.printf(
                Locale.ROOT,
                "The desk: %d moves of a load to and fro after %d to warm up, wall time from request to whole answer,%nand processor time of the thread that answers.%n",
                TIMES,
                WARM);
        BenchTable table = new BenchTable(
                "project",
                "loads",
                "move, median ms",
                "slowest of ten ms",
                "of it processor ms",
                "all places ms",
                "in the file, slowest of ten ms",
                "answer kB");
        table.head(System.out);
        String chosen = System.getProperty("bench.projects", "");
        for (String name : chosen.isBlank() ? USUAL : List.of(chosen.split(","))) {
            table.row(System.out, row(name));
        }
    }

    private static List<String> row(String name) throws IOException, InterruptedException {
        Project project = BenchProjects.read(name);
        Plan plan = new Planner(
                        new PlanningRequest(project, Optional.empty(), new Budget.Moves(MOVES), 1, 1), any -> {})
                .plan()
                .plan();
        Path folder = Files.createTempDirectory("bench-desk");
        try {
            ProjectFile.write(project, folder.resolve("project.json"), Format.JSON);
            PlanFile.write(plan, folder.resolve("project.plan.json"), Format.JSON);
        } catch (WriteFailed e) {
            throw new IOException(e);
        }
        try (OpenDesk desk = OpenDesk.on(folder, 0, new Jobs())) {
            Window window = new Window(desk.address());
            Assignment first = plan.assignments().stream()
                    .filter(each -> each.board().isPresent())
                    .findFirst()
                    .orElseThrow();
            double[] millis = new double[TIMES];
            double processorMillis = 0;
            int bytes = 0;
            String away = "{\"load\": \"" + first.load() + "\"}";
            String back = "{\"load\": \"" + first.load() + "\", \"panel\": \"" + first.panel() + "\", \"slot\": "
                    + first.slot() + "}";
            for (int i = -WARM; i < TIMES; i++) {
                if (i == 0) {
                    processorMillis = processorMillis();
                }
                long start = System.nanoTime();
                bytes = window.post("/api/move", i % 2 == 0 ? away : back);
                if (i >= 0) {
                    millis[i] = (System.nanoTime() - start) / 1e6;
                }
            }
            processorMillis = (processorMillis() - processorMillis) / TIMES;
            long start = System.nanoTime();
            window.post("/api/hang", "{\"load\": \"" + first.load() + "\", \"panels\": [\"" + first.panel() + "\"]}");
            double hanging = (System.nanoTime() - start) / 1e6;
            double kept = 0;
            for (int i = 0; i < KEPT; i++) {
                window.post("/api/move", i % 2 == 0 ? away : back);
                kept = Math.max(kept, millisUntilWritten(folder, first, i % 2 != 0));
            }
            Arrays.sort(millis);
            return List.of(
                    BenchProjects.label(name),
                    Integer.toString(project.loads().size()),
                    String.format(Locale.ROOT, "%.0f", millis[TIMES / 2]),
                    String.format(Locale.ROOT, "%.0f", millis[TIMES * 9 / 10]),
                    String.format(Locale.ROOT, "%.1f", processorMillis),
                    String.format(Locale.ROOT, "%.0f", hanging),
                    String.format(Locale.ROOT, "%.0f", kept),
                    Integer.toString(bytes / 1000));
        }
    }

    /** From the answer until the plan's file holds the change: what a kill could lose. Reading the file is within it. */
    private static double millisUntilWritten(Path folder, Assignment place, boolean isThere) {
        long start = System.nanoTime();
        boolean isWritten = false;
        while (!isWritten) {
            Plan kept =
                    PlanFile.read(folder.resolve("project.plan.json")).value().orElseThrow();
            isWritten = kept.assignments().stream()
                            .anyMatch(each -> each.load().equals(place.load())
                                    && each.panel().equals(place.panel())
                                    && each.slot() == place.slot())
                    == isThere;
        }
        return (System.nanoTime() - start) / 1e6;
    }

    /** Of the threads that answer: what a busy machine does not stretch. */
    private static double processorMillis() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                        .filter(each -> each != null && each.getThreadName().equals("desk"))
                        .mapToLong(each -> threads.getThreadCpuTime(each.getThreadId()))
                        .filter(nanos -> nanos > 0)
                        .sum()
                / 1e6;
    }

    private static final class Window {
        private static final Pattern REVISION = Pattern.compile("\\{\"revision\":([0-9]+)");

        private final HttpClient client =
                HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
        private final String origin;
        private String shown = "0";

        Window(String address) throws IOException, InterruptedException {
            origin = address.replaceFirst("/\\?.*", "");
            client.send(HttpRequest.newBuilder(URI.create(address)).build(), BodyHandlers.discarding());
        }

        int post(String path, String body) throws IOException, InterruptedException {
            var answer = client.send(
                    HttpRequest.newBuilder(URI.create(origin + path))
                            .header("Origin", origin)
                            .header("Content-Type", "application/json")
                            .header("Desk-Revision", shown)
                            .POST(BodyPublishers.ofString(body))
                            .build(),
                    BodyHandlers.ofByteArray());
            if (answer.statusCode() != 200) {
                throw new IOException(path + " " + new String(answer.body(), StandardCharsets.UTF_8));
            }
            Matcher revision = REVISION.matcher(new String(answer.body(), StandardCharsets.UTF_8));
            shown = revision.lookingAt() ? revision.group(1) : shown;
            return answer.body().length;
        }
    }
}
