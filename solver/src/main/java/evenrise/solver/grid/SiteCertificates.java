package evenrise.solver.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyStore;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * A small authority of a site's own and the keys of its machines, made by Java's keytool: elliptic curve P-256, certificates
 * good for ten years. There is no list of withdrawn ones: after a loss a new authority is made.
 */
public final class SiteCertificates {
    private static final String STORE = "authority.p12";
    private static final String PASSWORD = "password.txt";
    private static final String AUTHORITY_ALIAS = "authority";
    private static final String MACHINE_ALIAS = "machine";
    private static final String DAYS = "3650";
    private static final int PASSWORD_BYTES = 24;
    private static final String SPOKEN = "EVENRISE_STORE";

    private final Path folder;
    private final Path authority;

    /** @param folder that holds the authority's, and gets one for each machine */
    public SiteCertificates(Path folder) {
        this.folder = folder;
        this.authority = folder.resolve("authority");
    }

    /** @throws GridUnavailable where a name is none, a machine has keys already, or keytool does not do it */
    public void make(List<String> machines) {
        for (String machine : machines) {
            if (!machine.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,62}") || machine.equalsIgnoreCase("authority")) {
                throw new GridUnavailable("'" + machine + "' is no name of a machine: letters, digits, '.', '_', '-'.");
            }
            if (Files.exists(folder.resolve(machine))) {
                throw new GridUnavailable("'" + folder.resolve(machine) + "' is there. Keys are not overwritten.");
            }
        }
        try {
            Files.createDirectories(folder);
            if (!Files.exists(authority.resolve(STORE))) {
                makeAuthority();
            }
            for (String machine : machines) {
                makeMachine(machine);
            }
        } catch (IOException | GeneralSecurityException e) {
            throw new GridUnavailable("keys could not be made: " + e.getMessage() + ".", e);
        }
    }

    private void makeAuthority() throws IOException {
        Path draft = secret(folder, "authority");
        byte[] password = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(password);
        write(draft.resolve(PASSWORD), HexFormat.of().formatHex(password));
        keytool(
                draft,
                HexFormat.of().formatHex(password),
                List.of(
                        "-genkeypair",
                        "-alias",
                        AUTHORITY_ALIAS,
                        "-keyalg",
                        "EC",
                        "-groupname",
                        "secp256r1",
                        "-dname",
                        "CN=evenrise site authority",
                        "-ext",
                        "bc:c=ca:true,pathlen:0",
                        "-ext",
                        "ku:c=keyCertSign",
                        "-validity",
                        DAYS));
        Files.move(draft, authority, StandardCopyOption.ATOMIC_MOVE);
    }

    /** In the authority's store for a moment, to be signed; then out of it for good. */
    private void makeMachine(String machine) throws IOException, GeneralSecurityException {
        String password = Files.readString(authority.resolve(PASSWORD)).strip();
        Path draft = secret(folder, machine);
        Files.copy(authority.resolve(STORE), draft.resolve(STORE));
        keytool(
                draft,
                password,
                List.of(
                        "-genkeypair",
                        "-alias",
                        MACHINE_ALIAS,
                        "-keyalg",
                        "EC",
                        "-groupname",
                        "secp256r1",
                        "-dname",
                        "CN=" + machine,
                        "-signer",
                        AUTHORITY_ALIAS,
                        "-ext",
                        "bc=ca:false",
                        "-ext",
                        "ku:c=digitalSignature",
                        "-ext",
                        "eku=serverAuth,clientAuth",
                        "-ext",
                        "san=dns:" + machine,
                        "-validity",
                        DAYS));
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(draft.resolve(STORE))) {
            store.load(in, password.toCharArray());
        }
        Key key = store.getKey(MACHINE_ALIAS, password.toCharArray());
        write(draft.resolve(SiteKeys.KEY), pem("PRIVATE KEY", key.getEncoded()));
        write(
                draft.resolve(SiteKeys.CERTIFICATE),
                pem("CERTIFICATE", store.getCertificate(MACHINE_ALIAS).getEncoded()));
        write(
                draft.resolve(SiteKeys.AUTHORITY),
                pem("CERTIFICATE", store.getCertificate(AUTHORITY_ALIAS).getEncoded()));
        Files.delete(draft.resolve(STORE));
        Files.move(draft, folder.resolve(machine), StandardCopyOption.ATOMIC_MOVE);
    }

    private static void keytool(Path store, String password, List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
        command.addAll(arguments);
        command.addAll(List.of(
                "-keystore",
                store.resolve(STORE).toString(),
                "-storetype",
                "PKCS12",
                "-storepass:env",
                SPOKEN,
                "-J-Xmx64m"));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put(SPOKEN, password);
        Process process = builder.start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new IOException("keytool says: " + said.strip());
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }

    /** A folder that nobody else may look into, where the system knows such; taken away again if nothing comes of it. */
    private static Path secret(Path parent, String name) throws IOException {
        Path folder = parent.resolve("." + name + ".new");
        if (Files.exists(folder)) {
            try (Stream<Path> left = Files.walk(folder)) {
                for (Path each : left.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
        boolean isPosix = Files.getFileStore(parent).supportsFileAttributeView("posix");
        return isPosix
                ? Files.createDirectory(
                        folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")))
                : Files.createDirectory(folder);
    }

    private static void write(Path file, String text) throws IOException {
        Files.writeString(file, text + "\n", StandardCharsets.US_ASCII);
    }

    private static String pem(String what, byte[] der) {
        String body = Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
                .encodeToString(der);
        return "-----BEGIN " + what + "-----\n" + body + "\n-----END " + what + "-----";
    }
}
