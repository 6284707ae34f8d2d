package evenrise.model.file;

public final class PlanFile {
    public static Reading<evenrise.model.plan.Plan> read(java.nio.file.Path p) {
        throw new UnsupportedOperationException();
    }

    public static Reading<evenrise.model.plan.Plan> read(java.io.InputStream in, String name) {
        throw new UnsupportedOperationException();
    }

    public static void write(evenrise.model.plan.Plan plan, java.nio.file.Path p) throws java.io.IOException {
        throw new UnsupportedOperationException();
    }

    public static String text(evenrise.model.plan.Plan plan) {
        throw new UnsupportedOperationException();
    }
}
