# The library for the whole office, loaded when it is first asked for.


class Shell:
    library = None
    unusable = None  # why there is none

    @classmethod
    def opened(cls, context):
        if cls.library is None and cls.unusable is None:
            try:
                cls.library = loaded(os.path.dirname(os.path.abspath(__file__)), LIBRARIES, VERSION, len(FUNCTIONS))
                cls.library.trenchbook_set_host(host_name(context).encode("utf-8"))
            except Unusable as why:
                cls.unusable = why
