# Completion of channelaudit in bash: the program itself is asked what can stand at the cursor; where it knows nothing, files are offered.
_channelaudit() {
    local line=${COMP_LINE:0:COMP_POINT} IFS=$'\n'
    line=${line#"${COMP_WORDS[0]}"}
    COMPREPLY=($(channelaudit "[suggest:${#line}]" "$line" 2>/dev/null))
    # bash makes "=" a word of its own and completes only what stands behind it.
    if [[ ${COMP_WORDS[COMP_CWORD]} == = || ${COMP_WORDS[COMP_CWORD - 1]} == = ]]; then
        COMPREPLY=("${COMPREPLY[@]#*=}")
    fi
}
complete -o bashdefault -o default -F _channelaudit channelaudit
