package evenrise.solver.grid.ignite;

import evenrise.solver.grid.AnswerFolder;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridEngine.WorkerPost;
import evenrise.solver.grid.GridHosts;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.SiteKeys;
import evenrise.solver.grid.StopSignal;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A process of a fleet: a worker, or a driver that takes runs from its standard input. */
final class FleetMember {
    private FleetMember() {}

    /** @param arguments worker or driver, hosts, software, folder of keys or -, and of a worker its port and slots */
    public static void main(String[] arguments) throws Exception {
        Optional<SiteKeys> keys =
                arguments[3].equals("-") ? Optional.empty() : Optional.of(SiteKeys.of(Path.of(arguments[3])));
        GridSite site = new GridSite(GridHosts.of(arguments[1]), keys, arguments[2], Optional.empty());
        if (arguments[0].equals("worker")) {
            work(site, Integer.parseInt(arguments[4]), Integer.parseInt(arguments[5]));
        } else {
            drive(site);
        }
    }

    private static void work(GridSite site, int port, int slots) {
        try {
            new IgniteEngine()
                    .work(
                            site,
                            new WorkerPost(port, slots),
                            new FleetWork(System.out::println),
                            System.out::println,
                            new StopSignal());
        } catch (GridUnavailable e) {
            System.out.println("unavailable: " + e.getMessage());
            System.exit(1);
        }
    }

    /** Each line is a run: a folder, then jobs as VERB:NUMBER:FILE. */
    private static void drive(GridSite site) throws Exception {
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        System.out.println("ready");
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            String[] words = line.split(" ");
            List<String> jobs = List.of(words).subList(1, words.length);
            try (AnswerFolder answers = AnswerFolder.held(Path.of(words[0]), ".answer")
                    .orElseThrow(() -> new IllegalStateException("another driver holds the folder"))) {
                new IgniteGrid(site, System.out::println)
                        .run(open(answers, jobs), (job, answer) -> land(answers, job, answer), new StopSignal());
            } catch (RuntimeException e) {
                System.out.println("run failed: " + e.getMessage());
                continue;
            }
            // Said once the folder is free again: whoever hears it may hold it next.
            System.out.println("run ended");
        }
    }

    static GridJob job(String words) {
        String text = words.replace(':', ' ');
        String number = words.split(":")[1];
        return new GridJob("0".repeat(64 - number.length()) + number, text, text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<GridJob> open(AnswerFolder answers, List<String> jobs) {
        List<GridJob> open = new ArrayList<>();
        for (String each : jobs) {
            GridJob job = job(each);
            if (answers.answer(job.key()).isEmpty()) {
                open.add(job);
            }
        }
        return open;
    }

    private static void land(AnswerFolder answers, GridJob job, GridAnswer answer) {
        if (answer instanceof GridAnswer.Failed failed) {
            System.out.println("failed " + job.name() + " " + failed.cause());
            return;
        }
        try {
            if (job.name().startsWith("full")) {
                throw new IllegalStateException("the disk is full");
            }
            boolean isFirst = answers.land(job.key(), ((GridAnswer.Done) answer).output());
            System.out.println((isFirst ? "landed " : "landed again ") + job.name());
        } catch (evenrise.model.file.WriteFailed e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }
}
