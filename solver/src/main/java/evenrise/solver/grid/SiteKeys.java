package evenrise.solver.grid;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/**
 * Key and certificate of a machine, and the authority whose certificates it trusts, alone: PEM files (RFC 7468) of a
 * folder. Both sides of a connection show theirs.
 */
public final class SiteKeys {
    static final String KEY = "machine.key";
    static final String CERTIFICATE = "machine.crt";
    static final String AUTHORITY = "authority.crt";

    private static final String ALGORITHM = "EC";
    private static final Pattern PEM = Pattern.compile("-----BEGIN [A-Z ]+-----([^-]+)-----END [A-Z ]+-----");
    /** Guards a store that never leaves memory. */
    private static final char[] IN_MEMORY = "memory".toCharArray();

    private final SSLContext context;

    private SiteKeys(SSLContext context) {
        this.context = context;
    }

    /** @throws GridUnavailable that says which file is missing or wrong */
    public static SiteKeys of(Path folder) {
        try {
            Certificate machine = certificate(folder.resolve(CERTIFICATE));
            KeyStore own = empty();
            own.setKeyEntry("machine", key(folder.resolve(KEY)), IN_MEMORY, new Certificate[] {machine});
            KeyStore trusted = empty();
            trusted.setCertificateEntry("authority", certificate(folder.resolve(AUTHORITY)));
            KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            keys.init(own, IN_MEMORY);
            TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(trusted);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(keys.getKeyManagers(), trust.getTrustManagers(), null);
            return new SiteKeys(context);
        } catch (GeneralSecurityException e) {
            throw new GridUnavailable("the keys in '" + folder + "' cannot be used: " + e.getMessage() + ".", e);
        }
    }

    /** With which both sides are asked for their certificates. */
    public SSLContext context() {
        return context;
    }

    private static KeyStore empty() throws GeneralSecurityException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        try {
            store.load(null, null);
        } catch (IOException e) {
            throw new IllegalStateException("nothing is read", e);
        }
        return store;
    }

    private static Certificate certificate(Path file) throws GeneralSecurityException {
        return CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(der(file)));
    }

    private static PrivateKey key(Path file) throws GeneralSecurityException {
        return KeyFactory.getInstance(ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(der(file)));
    }

    private static byte[] der(Path file) {
        try {
            Matcher pem = PEM.matcher(Files.readString(file, StandardCharsets.US_ASCII));
            if (pem.find()) {
                return Base64.getMimeDecoder().decode(pem.group(1));
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new GridUnavailable(
                    "'" + file + "' cannot be read; a folder of keys holds " + KEY + ", " + CERTIFICATE + " and "
                            + AUTHORITY + ".",
                    e);
        }
        throw new GridUnavailable("'" + file + "' is no PEM file.");
    }
}
