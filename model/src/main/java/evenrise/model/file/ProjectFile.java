package evenrise.model.file;

public final class ProjectFile {
    public static Reading<evenrise.model.project.Project> read(java.nio.file.Path p) {
        throw new UnsupportedOperationException();
    }

    public static Reading<evenrise.model.project.Project> read(java.io.InputStream in, String name) {
        throw new UnsupportedOperationException();
    }
}
